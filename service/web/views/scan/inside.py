"""Who may see on the scan page more than anybody who finds a card."""

from __future__ import annotations

import ipaddress

from fastapi import Request


def may_see_inside(_request: Request) -> bool:
    """Tell whether contents and location may be told to whoever asks, whatever the museum opens.

    That is for those who have signed in, and nobody can sign in yet.
    """
    return False


def is_at_this_machine(request: Request) -> bool:
    """Tell whether the page is read on the machine that serves it."""
    if request.client is None:
        return False
    try:
        return ipaddress.ip_address(request.client.host).is_loopback
    except ValueError:
        return False
