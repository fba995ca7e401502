"""The certificate of this machine: made and signed by itself, so that others compare it once.

No authority stands behind it, and it is none itself: whoever gets hold of its key can pretend to
be this machine and nothing else. It holds for 825 days, the most that devices take from a
certificate of one's own (Apple, "Requirements for trusted certificates in iOS 13"; from memory).
"""

from __future__ import annotations

import os
from dataclasses import dataclass
from datetime import datetime, timedelta
from ipaddress import ip_address
from pathlib import Path

from cryptography import x509
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.hazmat.primitives.serialization import Encoding, NoEncryption, PrivateFormat
from cryptography.x509.oid import ExtendedKeyUsageOID, NameOID

from service.errors import ConfigError
from service.keeping.sharing.addresses import Names

CERTIFICATE_FILE, KEY_FILE = "certificate.pem", "certificate_key.pem"
HOLDS = timedelta(days=825)
RENEWED_BEFORE = timedelta(days=30)
_CLOCKS_DIFFER = timedelta(days=1)
_KEY_MODE = 0o600


@dataclass(frozen=True, slots=True)
class Certificate:
    """A certificate on disk: its files, what it is for, and what people compare."""

    path: Path
    key_path: Path
    names: tuple[str, ...]
    fingerprint: str
    ends_at: datetime


def keep_certificate(folder: Path, names: Names, *, now: datetime) -> Certificate:
    """Give the certificate in a folder, or make one where it is missing, old, or of other names.

    A new one has another fingerprint, and every telephone asks once more.
    """
    path, key_path = folder / CERTIFICATE_FILE, folder / KEY_FILE
    if path.is_file() and key_path.is_file():
        kept = read_certificate(path, key_path)
        if set(names.all) <= set(kept.names) and now < kept.ends_at - RENEWED_BEFORE:
            return kept
    folder.mkdir(parents=True, exist_ok=True)
    key = ec.generate_private_key(ec.SECP256R1())
    secret = key.private_bytes(Encoding.PEM, PrivateFormat.PKCS8, NoEncryption())
    _write(key_path, secret)
    _write(path, _sign(key, names, now).public_bytes(Encoding.PEM))
    return read_certificate(path, key_path)


def read_certificate(path: Path, key_path: Path) -> Certificate:
    """Read for which names a certificate is, until when, and its fingerprint.

    Raises:
        ConfigError: When the file is no certificate.
    """
    try:
        read = x509.load_pem_x509_certificate(path.read_bytes())
        said = read.extensions.get_extension_for_class(x509.SubjectAlternativeName).value
    except (OSError, ValueError, x509.ExtensionNotFound) as error:
        raise ConfigError(str(path), reason=f"it is no certificate with names ({error})") from error
    names = (
        *said.get_values_for_type(x509.DNSName),
        *map(str, said.get_values_for_type(x509.IPAddress)),
    )
    fingerprint = read.fingerprint(SHA256()).hex(":").upper()
    return Certificate(path, key_path, names, fingerprint, read.not_valid_after_utc)


def _sign(key: ec.EllipticCurvePrivateKey, names: Names, now: datetime) -> x509.Certificate:
    called = names.all[0] if names.all else "underlid"
    subject = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, called[:64])])
    begins_at = now - _CLOCKS_DIFFER
    builder = (
        x509.CertificateBuilder()
        .subject_name(subject)
        .issuer_name(subject)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(begins_at)
        .not_valid_after(begins_at + HOLDS)
    )
    for extension, critical in _extensions(names):
        builder = builder.add_extension(extension, critical=critical)
    return builder.sign(key, SHA256())


def _extensions(names: Names) -> list[tuple[x509.ExtensionType, bool]]:
    """Say that it is no authority and signs only what this server says."""
    uses = dict.fromkeys(
        (
            "content_commitment",
            "key_encipherment",
            "data_encipherment",
            "key_agreement",
            "key_cert_sign",
            "crl_sign",
            "encipher_only",
            "decipher_only",
        ),
        False,
    )
    others: list[x509.GeneralName] = [x509.DNSName(name) for name in names.names]
    others += [x509.IPAddress(ip_address(address)) for address in names.addresses]
    return [
        (x509.SubjectAlternativeName(others), False),
        (x509.BasicConstraints(ca=False, path_length=None), True),
        (x509.KeyUsage(digital_signature=True, **uses), True),
        (x509.ExtendedKeyUsage([ExtendedKeyUsageOID.SERVER_AUTH]), False),
    ]


def _write(path: Path, data: bytes) -> None:
    """Write a file that only its owner reads, from its first byte on, whole or not at all."""
    part = path.with_suffix(".part")
    part.unlink(missing_ok=True)
    descriptor = os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL, _KEY_MODE)
    with os.fdopen(descriptor, "wb") as file:
        file.write(data)
    part.replace(path)
