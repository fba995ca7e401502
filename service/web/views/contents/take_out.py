"""Taking an object out of a container for good."""

from __future__ import annotations

from fastapi import APIRouter, Response

from service.contents.places import name_place
from service.keeping.repack import take_out
from service.languages.saying import say
from service.store.handles import Connection
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.views.contents.seen import TheDesire, make_change, undo_packing
from service.web.views.shell.notice import Notice

router = APIRouter(route_class=GatedRoute)


@router.post("/contents/take-out", include_in_schema=False, dependencies=[needs(Role.PACK)])
def take_object_out(desire: TheDesire) -> Response:
    """Take an object, or the parts of it that lie at one place, out; Undo puts it back."""

    def change(connection: Connection) -> Notice:
        place = desire.find(connection)
        packed = take_out(
            connection,
            desire.seen,
            place.object_number,
            parts=place.parts,
            stamp=desire.acting.stamp,
        )
        words = say("{place} is taken out.", place=name_place(place))
        return Notice(words, undo_packing(desire.seen, packed.revision))

    return make_change(desire, change)
