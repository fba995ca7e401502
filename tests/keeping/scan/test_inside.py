from __future__ import annotations

from dataclasses import replace

import pytest

from service.errors import NotFoundError
from service.keeping.rounds.loading import load_container_of, load_packings
from service.keeping.scan.inside import NOTHING_INSIDE, open_inside, see_inside
from service.records.record import Collection
from service.store.handles import Connection
from service.store.save_records import save_records
from tests.keeping.made import BOX, COLLECTION, JAR, LEAD
from tests.store.made import STAMP


def test_everybody_sees_what_the_museum_opens(connection: Connection) -> None:
    """Nothing without its word; contents and location each by itself."""
    packing = load_container_of(load_packings(connection, [BOX]), BOX)
    museum = COLLECTION.museum
    assert open_inside(packing, museum) == NOTHING_INSIDE
    contents = open_inside(packing, replace(museum, scan_shows_contents=True))
    assert [number for number, _ in contents.contents] == [JAR, LEAD]
    assert contents.location == ""
    location = open_inside(packing, replace(museum, scan_shows_location=True))
    assert (location.location, location.contents) == ("Store 2 / Bay 4", ())


def test_restricted_objects_are_only_counted(connection: Connection) -> None:
    """Whoever looks: a screen is seen by others, too."""
    hidden = replace(COLLECTION.objects[0], restricted=True)
    save_records(connection, Collection(objects=(hidden,)), stamp=STAMP)
    seen = see_inside(connection, BOX)
    assert seen.contents == ((LEAD, "Lead line"),)
    assert (seen.others, seen.location) == (1, "Store 2 / Bay 4")
    with pytest.raises(NotFoundError):
        see_inside(connection, "B-999")
