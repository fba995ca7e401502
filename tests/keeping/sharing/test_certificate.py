from __future__ import annotations

import hashlib
import socket
import ssl
import sys
import threading
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from service.errors import ConfigError
from service.keeping.sharing.addresses import Names
from service.keeping.sharing.certificate import (
    HOLDS,
    RENEWED_BEFORE,
    Certificate,
    keep_certificate,
    read_certificate,
)

NAMES = Names(("stores-pc", "stores-pc.local"), ("192.168.1.20",))
NOW = datetime(2026, 11, 25, 9, 30, tzinfo=UTC)
DAY = timedelta(days=1)


def test_a_certificate_is_for_the_names_it_was_made_for(tmp_path: Path) -> None:
    """It holds for 825 days, from a day before, for clocks differ."""
    made = keep_certificate(tmp_path / "data", NAMES, now=NOW)
    assert made.names == NAMES.all
    assert made.ends_at == NOW - DAY + timedelta(days=825)


@pytest.mark.skipif(sys.platform == "win32", reason="Windows has no such modes")
def test_only_its_owner_reads_the_key(tmp_path: Path) -> None:
    """Nobody else on the machine can pretend to be the service."""
    made = keep_certificate(tmp_path, NAMES, now=NOW)
    assert made.key_path.stat().st_mode & 0o777 == 0o600
    assert sorted(path.name for path in tmp_path.iterdir()) == [
        "certificate.pem",
        "certificate_key.pem",
    ]


def test_the_fingerprint_is_what_a_browser_shows(tmp_path: Path) -> None:
    """The SHA-256 of the certificate as it is sent, found by the standard library."""
    made = keep_certificate(tmp_path, NAMES, now=NOW)
    sent = ssl.PEM_cert_to_DER_cert(made.path.read_text(encoding="ascii"))
    assert made.fingerprint.replace(":", "").lower() == hashlib.sha256(sent).hexdigest()


def test_it_stays_as_long_as_it_will_do(tmp_path: Path) -> None:
    """Telephones that have accepted it ask again only for another name, or towards its end."""
    first = keep_certificate(tmp_path, NAMES, now=NOW)
    fewer = Names(("stores-pc",), ())
    assert keep_certificate(tmp_path, fewer, now=NOW) == first
    late = first.ends_at - RENEWED_BEFORE
    assert keep_certificate(tmp_path, NAMES, now=late - DAY) == first
    renewed = keep_certificate(tmp_path, NAMES, now=late)
    assert renewed.ends_at == late - DAY + HOLDS
    other = keep_certificate(tmp_path, Names(("elsewhere",), ()), now=late)
    assert other.fingerprint != renewed.fingerprint


def test_what_is_no_certificate_is_told(tmp_path: Path) -> None:
    """A damaged file, or none, names the file."""
    path = tmp_path / "certificate.pem"
    for text in (None, "no certificate"):
        if text is not None:
            path.write_text(text, encoding="ascii")
        with pytest.raises(ConfigError, match=r"certificate\.pem"):
            read_certificate(path, path)


def _shake_hands(made: Certificate, name: str) -> str:
    """Connect to a server that has the certificate as a client that trusts just this one."""
    server = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    server.load_cert_chain(made.path, made.key_path)
    client = ssl.create_default_context(cafile=str(made.path))
    with socket.create_server(("127.0.0.1", 0)) as listener:
        thread = threading.Thread(target=_answer, args=(listener, server))
        thread.start()
        try:
            with (
                socket.create_connection(listener.getsockname(), timeout=20) as plain,
                client.wrap_socket(plain, server_hostname=name) as secured,
            ):
                return str(secured.version())
        finally:
            thread.join()


def _answer(listener: socket.socket, server: ssl.SSLContext) -> None:
    plain, _ = listener.accept()
    with plain:
        plain.settimeout(20)
        try:
            server.wrap_socket(plain, server_side=True).close()
        except OSError:
            return


def test_a_client_takes_it_for_these_names_alone(tmp_path: Path) -> None:
    """OpenSSL accepts name and address, and refuses any other name."""
    made = keep_certificate(tmp_path, NAMES, now=datetime.now(tz=UTC))  # noqa: TID251 - of today
    for name in ("stores-pc.local", "192.168.1.20"):
        assert _shake_hands(made, name) in {"TLSv1.2", "TLSv1.3"}
    with pytest.raises(ssl.SSLCertVerificationError, match=r"mismatch|not valid for"):
        _shake_hands(made, "evil.example")
