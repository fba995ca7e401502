"""The serve command: where the service listens, and who can reach it there."""

from __future__ import annotations

import importlib
from collections.abc import Callable
from ipaddress import ip_address

from rich.console import Console

from service.config import Settings


def serve_api(console: Console, settings: Settings) -> int:
    """Listen until told to stop, and say first where and for whom.

    Raises:
        ConfigError: When the address cannot be used.
    """
    # By name and late: the other commands start without the libraries of the web.
    serve: Callable[[Settings, Callable[[str], None]], None] = importlib.import_module(
        "service.web.server"
    ).serve

    def say_address(address: str) -> None:
        console.print(f"Listening on {address} (Ctrl-C ends it).", markup=False)
        console.print(who_can_reach(settings), markup=False)
        console.print(f"Thumbnails are kept in {settings.data}.", markup=False)

    serve(settings, say_address)
    return 0


def who_can_reach(settings: Settings) -> str:
    """Say who can reach an address, and what they have to do."""
    if settings.behind_proxy:
        return "It answers the proxy on this machine; everybody has to sign in."
    if is_loopback(settings.host):
        return "It answers this machine only."
    return "Others on the network reach it, too; everybody has to sign in."


def is_loopback(host: str) -> bool:
    """Tell whether an address is one that only this machine reaches."""
    try:
        return ip_address(host).is_loopback
    except ValueError:
        return host == "localhost"
