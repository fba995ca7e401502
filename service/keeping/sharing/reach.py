"""How others on the network reach the service: what they type, and the fingerprint to compare."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from service.keeping.sharing.certificate import Certificate


@dataclass(frozen=True, slots=True)
class Reach:
    """What others may type, figures first: those work on every telephone.

    Without addresses this machine alone is answered. `fingerprint` is the SHA-256 of the
    certificate and `ends_at` its last moment; behind a proxy both are not known here.
    """

    addresses: tuple[str, ...] = ()
    fingerprint: str = ""
    ends_at: datetime | None = None


UNREACHED = Reach()
"""This machine alone is answered."""


def reach_by_certificate(certificate: Certificate, port: int) -> Reach:
    """Give what others type where the service itself answers under a certificate."""
    figures = [name for name in certificate.names if name[-1].isdigit()]
    names = [name for name in certificate.names if name not in figures and "." in name]
    addresses = tuple(f"https://{name}:{port}" for name in (*figures, *names))
    return Reach(addresses, certificate.fingerprint, certificate.ends_at)


def reach_by_proxy(hosts: Iterable[str]) -> Reach:
    """Give what others type where a proxy answers them, at the port of https."""
    return Reach(tuple(f"https://{host}" for host in sorted(hosts)))
