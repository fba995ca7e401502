"""The path of the swap list: one PDF to walk the store with."""

from __future__ import annotations

import shutil
from typing import Literal

from fastapi import APIRouter, Response

from service.keeping.swap_list import print_swaps
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheActing

router = APIRouter(route_class=GatedRoute)

_PDF = "application/pdf"


@router.post(
    "/api/swap-list",
    dependencies=[needs(Role.PRINT)],
    response_class=Response,
    responses={200: {"content": {_PDF: {}}}},
)
def swap_list(acting: TheActing, paper: Literal["A4", "Letter"] = "A4") -> Response:
    """Print which cards to take off and which to put on, in walking order, with boxes to tick.

    It names whoever asks, and keeps nothing: asked for again it shows what is wrong by then.
    """
    with acting.counter.working() as desk:
        path = print_swaps(desk, stamp=acting.stamp, paper=paper)
        try:
            data = path.read_bytes()
        finally:
            shutil.rmtree(path.parent)
    headers = {"Content-Disposition": 'inline; filename="swap-list.pdf"'}
    return Response(data, media_type=_PDF, headers=headers)
