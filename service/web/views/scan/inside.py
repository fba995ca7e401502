"""Who may see on the scan page more than anybody who finds a card."""

from __future__ import annotations

from fastapi import Request

from service.store.people.role import Role
from service.web.access.porter import reader_of


def may_see_inside(request: Request) -> bool:
    """Tell whether contents and location may be told to whoever asks, whatever the museum opens.

    That is for those who have signed in: somebody else may look over the shoulder of a machine.
    """
    reader = reader_of(request)
    return reader.is_signed_in and reader.may(Role.VIEW)


def may_go_in(request: Request) -> bool:
    """Tell whether the page of what was scanned would open: signed in, or as long as none is."""
    return reader_of(request).may(Role.VIEW)
