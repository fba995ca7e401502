from __future__ import annotations

import pytest
from sqlalchemy import Connection

from service.errors import NotFoundError
from service.records.record import PackingRecord, PlaceRecord
from service.store.packing.load import (
    find_object,
    load_current,
    load_holders,
    load_packing,
)
from service.store.packing.save import save_packing
from tests.store.made import HAT, LAMP, LEAD, STAMP, collection


def test_every_revision_stays(connection: Connection) -> None:
    """Earlier packings are there as they were; the current one is given where none is named."""
    first = collection().packings[0]
    second = save_packing(connection, PackingRecord("B-001"), expected_revision=1, stamp=STAMP)
    assert load_packing(connection, "B-001") == second == PackingRecord("B-001", 2)
    assert load_packing(connection, "B-001", revision=1) == first
    assert load_packing(connection, "B-003") == PackingRecord("B-003", 0)


@pytest.mark.parametrize(("number", "revision"), [("B-999", None), ("B-001", 9), ("B-003", 1)])
def test_what_is_not_there(connection: Connection, number: str, revision: int | None) -> None:
    """A container or revision that is not there is refused by name."""
    with pytest.raises(NotFoundError, match=number):
        load_packing(connection, number, revision=revision)


def test_current_packings(connection: Connection) -> None:
    """Current packings come of all containers, or of those named."""
    one, two = collection().packings
    assert load_current(connection) == {"B-001": one, "B-002": two}
    assert load_current(connection, ["B-002", "B-003"]) == {"B-002": two}


def test_where_things_lie(connection: Connection) -> None:
    """An object is found in one step, by what is packed now and not by what was once."""
    assert find_object(connection, HAT) == ("B-002",)
    assert load_holders(connection, [HAT, LEAD, LAMP]) == {
        "B-001": (PlaceRecord(LEAD),),
        "B-002": (PlaceRecord(HAT, ("a", "b")),),
    }
    save_packing(connection, PackingRecord("B-002"), expected_revision=1, stamp=STAMP)
    assert find_object(connection, HAT) == ()
