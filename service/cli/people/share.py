"""The share command: a first manager, a certificate, and what to type on a telephone."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from rich.console import Console

from service.cli.at_desk import AtDesk, answer, now
from service.cli.people.passwords import ask_name, ask_password
from service.cli.serving import is_loopback, serve_api
from service.config import Settings
from service.keeping.people.users import NewUser, add_user, read_name
from service.keeping.sharing.addresses import find_names
from service.keeping.sharing.certificate import (
    Certificate,
    keep_certificate,
    read_certificate,
)
from service.store.history import Stamp
from service.store.open import reading, writing
from service.store.people.role import Role
from service.store.people.users import has_users

_EVERYWHERE = "0.0.0.0"  # noqa: S104 - to be reached by others is what sharing is


@dataclass(frozen=True, slots=True)
class ShareRequest:
    """How to share: who becomes the first manager, and whether only to prepare."""

    name: str = ""
    only_prepare: bool = False
    as_json: bool = False


def share_store(console: Console, settings: Settings, request: ShareRequest) -> int:
    """Prepare what sharing needs, say what others have to do, and serve.

    Raises:
        ServiceError: When it cannot be prepared, or the address cannot be used.
    """
    added = _add_first(settings, request.name)
    certificate = _find_certificate(settings)
    shared = settings_to_share(settings, certificate)
    data = {
        "addresses": list_addresses(shared, certificate),
        "fingerprint_sha256": certificate.fingerprint,
        "certificate": str(certificate.path),
        "certificate_ends_at": certificate.ends_at,
        "first_manager": added,
    }
    answer(data, _lines(data, certificate), as_json=request.as_json)
    return 0 if request.only_prepare else serve_api(console, shared)


def settings_to_share(settings: Settings, certificate: Certificate) -> Settings:
    """Give the settings with which others are answered: over https, by the certificate's names."""
    hosts = sorted({*settings.hosts, *certificate.names})
    return settings.model_copy(
        update={
            "host": _EVERYWHERE if is_loopback(settings.host) else settings.host,
            "allowed_hosts": ",".join(hosts),
            "certificate": str(certificate.path),
            "key": str(certificate.key_path),
        }
    )


def list_addresses(settings: Settings, certificate: Certificate) -> list[str]:
    """List what others may type, figures first: those work on every telephone."""
    figures = [name for name in certificate.names if name[-1].isdigit()]
    names = [name for name in certificate.names if name not in figures and "." in name]
    return [f"https://{name}:{settings.port}" for name in (*figures, *names)]


def _find_certificate(settings: Settings) -> Certificate:
    if settings.certificate:
        return read_certificate(Path(settings.certificate), Path(settings.key))
    own = () if is_loopback(settings.host) or settings.host == _EVERYWHERE else (settings.host,)
    names = find_names(besides=(*settings.hosts, *own))
    return keep_certificate(settings.data, names, now=now())


def _add_first(settings: Settings, given: str) -> str:
    """Add the first manager where there is none, and give the name."""
    with AtDesk(settings).store() as engine:
        with reading(engine) as connection:
            if has_users(connection):
                return ""
        name = read_name(ask_name(given))
        new = NewUser(name, Role.MANAGE, ask_password())
        with writing(engine) as connection:
            return add_user(connection, new, stamp=Stamp(name, now())).name


def _lines(data: dict[str, object], certificate: Certificate) -> list[str]:
    addresses = data["addresses"]
    first = [f"{data['first_manager']} manages the users from now on."]
    return [
        *(first if data["first_manager"] else []),
        "On a telephone or another computer of this network type one of these:",
        *(f"  {address}" for address in (addresses if isinstance(addresses, list) else ())),
        "It will warn that the certificate is not known. Show the certificate, compare its SHA-256",
        "fingerprint with this one, and go on only if they are the same:",
        f"  {certificate.fingerprint}",
        f"The certificate holds until {certificate.ends_at:%d %b %Y}.",
    ]
