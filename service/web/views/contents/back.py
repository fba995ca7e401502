"""Packing a container as it was: the way back from every change."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Form, Response

from service.keeping.repack import go_back
from service.languages.saying import say
from service.store.handles import Connection
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.views.contents.seen import TheDesire, make_change, undo_packing
from service.web.views.shell.notice import Notice

router = APIRouter(route_class=GatedRoute)


@router.post("/contents/back", include_in_schema=False, dependencies=[needs(Role.PACK)])
def back(desire: TheDesire, to: Annotated[int, Form(ge=0, le=999_999_999)]) -> Response:
    """Pack a container again as it was at an earlier revision; nothing that was is lost."""

    def change(connection: Connection) -> Notice:
        packed = go_back(connection, desire.seen, to, stamp=desire.acting.stamp)
        words = say("Packed again as it was at revision {to}.", to=to)
        return Notice(words, undo_packing(desire.seen, packed.revision))

    return make_change(desire, change)
