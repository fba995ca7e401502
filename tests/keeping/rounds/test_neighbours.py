from __future__ import annotations

import pytest

from service.errors import NotFoundError
from service.keeping.rounds.neighbours import Neighbours, neighbours
from service.records.record import Collection, ContainerRecord
from service.store.handles import Connection
from service.store.save_records import save_records
from tests.store.made import STAMP


def named(found: Neighbours) -> tuple[list[str], list[str], list[str]]:
    """Name the containers of each part."""
    together, beside, after = (
        [one.container_number for one in part]
        for part in (found.together, found.beside, found.next)
    )
    return together, beside, after


@pytest.fixture
def shelved(connection: Connection) -> Connection:
    """Give a store with four shelves, three boxes on the second, a folder in one of them."""
    places = {"S-1": 1, "S-2a": 2, "S-2b": 2, "S-2c": 2, "S-9": 9, "S-10": 10}
    records = [ContainerRecord(one, location=("Z", f"shelf {at}")) for one, at in places.items()]
    records += [ContainerRecord("F-1", inside="S-2b"), ContainerRecord("F-2", inside="S-2c")]
    save_records(connection, Collection(containers=tuple(records)), stamp=STAMP)
    return connection


def test_the_same_shelf_comes_first(shelved: Connection) -> None:
    """What lies in the box, then its shelf, then two places on either side as one walks."""
    found = neighbours(shelved, "S-2b")
    assert named(found) == (["F-1"], ["S-2a", "S-2c"], ["B-042", "S-1", "S-9", "S-10"])
    assert found.is_located


def test_the_walk_has_an_end(shelved: Connection) -> None:
    """Behind the last shelf nothing stands; what has no place is no neighbour."""
    assert named(neighbours(shelved, "S-10")) == ([], [], ["S-2c", "S-9"])


def test_what_lies_in_a_box_has_its_neighbours(shelved: Connection) -> None:
    """Pests leave a folder for the box it lies in."""
    assert named(neighbours(shelved, "F-1")) == (
        ["S-2b"],
        ["S-2a", "S-2c"],
        ["B-042", "S-1", "S-9", "S-10"],
    )


def test_without_a_place_little_can_be_known(shelved: Connection) -> None:
    """It says that it does not know, and never that there is nothing."""
    assert neighbours(shelved, "GC-7") == Neighbours((), (), (), is_located=False)
    with pytest.raises(NotFoundError):
        neighbours(shelved, "B-999")
