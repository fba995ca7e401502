"""The path that says how others reach the service."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Depends, Request

from service.keeping.sharing.reach import Reach
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.access.handed import handed
from service.web.store.people.shapes import SharingView

router = APIRouter(route_class=GatedRoute)


def reach_of(request: Request) -> Reach:
    """Give how others reach the service a request came to.

    Raises:
        TypeError: When the application was not told.
    """
    reach = handed(request, "reach")
    if not isinstance(reach, Reach):
        raise TypeError(type(reach))
    return reach


TheReach = Annotated[Reach, Depends(reach_of)]


@router.get("/api/sharing", dependencies=[needs(Role.MANAGE)])
def sharing(reach: TheReach) -> SharingView:
    """Say what others type, and the fingerprint they compare; no address: this machine alone."""
    return SharingView(
        addresses=list(reach.addresses),
        fingerprint_sha256=reach.fingerprint,
        certificate_ends_at=reach.ends_at,
    )
