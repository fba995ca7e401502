"""What must be there before anybody but this machine is answered."""

from __future__ import annotations

import ssl

from service.config import PREFIX, Settings
from service.errors import ConfigError
from service.store.handles import Engine
from service.store.open import reading
from service.store.people.users import has_users
from service.web.guard import is_loopback

_FILES = f"{PREFIX}CERTIFICATE, {PREFIX}KEY"
_NAMES = f"{PREFIX}ALLOWED_HOSTS"


def check_reach(settings: Settings) -> None:
    """Refuse settings under which others would be answered in clear, or by any name.

    Raises:
        ConfigError: When something is missing; it says what, and what to do.
    """
    if bool(settings.certificate) != bool(settings.key):
        reason = "certificate and key are used together; name both or neither"
        raise ConfigError(_FILES, reason=reason)
    if not is_loopback(settings.host) and not settings.certificate:
        reason = (
            "others than this machine are answered over https only; start with"
            f" `python3 -m service share`, or name {PREFIX}CERTIFICATE and {PREFIX}KEY"
        )
        raise ConfigError(_name_host(settings), reason=reason)
    if is_shared(settings) and not settings.hosts:
        reason = (
            "say by which names others reach it, with commas between, such as"
            " cards.museum.example; `python3 -m service share` does so by itself"
        )
        raise ConfigError(_NAMES, reason=reason)
    if settings.certificate:
        _check_files(settings)


def check_users(settings: Settings, engine: Engine) -> None:
    """Refuse to answer others as long as nobody would have to sign in.

    Raises:
        ConfigError: When the store has no user.
    """
    if not is_shared(settings):
        return
    with reading(engine) as connection:
        if has_users(connection):
            return
    reason = (
        "there is no user yet, so that whoever reaches it could do everything; add the first with"
        " `python3 -m service users add`, or start with `python3 -m service share`"
    )
    raise ConfigError(_name_host(settings), reason=reason)


def is_shared(settings: Settings) -> bool:
    """Tell whether others than this machine are meant to be answered, a proxy included."""
    return not is_loopback(settings.host) or settings.behind_proxy or bool(settings.hosts)


def _name_host(settings: Settings) -> str:
    return f"{PREFIX}HOST={settings.host}"


def _check_files(settings: Settings) -> None:
    """Look whether certificate and key can be used before anything is opened.

    Raises:
        ConfigError: When they cannot.
    """
    try:
        ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER).load_cert_chain(settings.certificate, settings.key)
    except OSError as error:
        reason = f"the files cannot be used together ({error.strerror or error})"
        raise ConfigError(_FILES, reason=reason) from error
