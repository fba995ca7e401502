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
        console.print(who_can_reach(settings.host), markup=False)
        console.print(f"Thumbnails are kept in {settings.data}.", markup=False)

    serve(settings, say_address)
    return 0


def who_can_reach(host: str) -> str:
    """Say who can reach an address, as long as the service knows no users."""
    if _is_loopback(host):
        return "There are no users yet, so it answers this machine only."
    return (
        "Whoever reaches this address can print: there are no users and no passwords yet."
        " Use it only where that is meant."
    )


def _is_loopback(host: str) -> bool:
    try:
        return ip_address(host).is_loopback
    except ValueError:
        return host == "localhost"
