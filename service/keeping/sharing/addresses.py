"""What this machine is called and where it is on its networks."""

from __future__ import annotations

import re
import socket
from collections.abc import Iterable
from contextlib import suppress
from dataclasses import dataclass
from ipaddress import IPv4Address, ip_address

# RFC 5737: an address that nobody has. Aiming a datagram socket at it sends nothing.
NOWHERE = ("192.0.2.1", 9)
_NAME = re.compile(
    r"[a-z0-9](?:[a-z0-9-]{0,61}[a-z0-9])?(?:\.[a-z0-9](?:[a-z0-9-]{0,61}[a-z0-9])?)*"
)


@dataclass(frozen=True, slots=True)
class Names:
    """What others may type to reach this machine: names and addresses in figures."""

    names: tuple[str, ...]
    addresses: tuple[str, ...]

    @property
    def all(self) -> tuple[str, ...]:
        """Give both, names first."""
        return (*self.names, *self.addresses)


def find_names(*, besides: Iterable[str] = ()) -> Names:
    """Find what this machine goes by: its name, that name with .local, its private addresses."""
    return choose_names(socket.gethostname(), [*_ask_resolver(), *_ask_route()], besides)


def choose_names(host_name: str, addresses: Iterable[str], besides: Iterable[str]) -> Names:
    """Choose what can stand in a certificate; `besides` are names and addresses from a setting."""
    given = [name.casefold() for name in besides]
    own = host_name.casefold().removesuffix(".local").partition(".")[0]
    named = [own, f"{own}.local", host_name.casefold()] if own else []
    names = [name for name in (*named, *given) if _NAME.fullmatch(name) and not _is_address(name)]
    figures = [text for text in addresses if _is_private(text)]
    figures += [text for text in given if _is_address(text)]
    return Names(tuple(dict.fromkeys(names)), tuple(dict.fromkeys(figures)))


def _ask_resolver() -> list[str]:
    with suppress(OSError):
        found = socket.getaddrinfo(socket.gethostname(), None, socket.AF_INET)
        return [str(entry[4][0]) for entry in found]
    return []


def _ask_route() -> list[str]:
    """Ask the system from which of its addresses it would reach others."""
    with suppress(OSError), socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as aimed:
        aimed.connect(NOWHERE)
        return [str(aimed.getsockname()[0])]
    return []


def _is_private(text: str) -> bool:
    address = ip_address(text)
    usable = not (address.is_loopback or address.is_link_local or address.is_unspecified)
    return isinstance(address, IPv4Address) and address.is_private and usable


def _is_address(text: str) -> bool:
    try:
        ip_address(text)
    except ValueError:
        return False
    return True
