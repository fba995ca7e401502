from __future__ import annotations

from sqlalchemy import Connection

from service.records.record import Collection, ContainerRecord, PackingRecord, PlaceRecord
from service.store.lists.walk import load_filled, load_walk
from service.store.packing.save import save_packing
from service.store.save_records import save_records
from tests.store.made import STAMP


def save(connection: Connection, *records: ContainerRecord) -> None:
    """Save containers."""
    save_records(connection, Collection(containers=records), stamp=STAMP)


def test_one_walks_as_people_count(connection: Connection) -> None:
    """Bay 9 comes before bay 10, and what has no location comes last."""
    save(
        connection,
        ContainerRecord("B-002", title="Hats", location=("Store 2", "Bay 9")),
        ContainerRecord("B-001", location=("Store 2", "Bay 10")),
    )
    walk = load_walk(connection)
    assert [one.container_number for one in walk] == ["B-002", "B-001", "B-003"]
    assert (walk[0].title, walk[0].location) == ("Hats", "Store 2 / Bay 9")
    assert [one.is_packed for one in walk] == [True, True, False]


def test_what_lies_in_another_stands_behind_it(connection: Connection) -> None:
    """A folder is met at its box, whatever its own record says; a circle is cut."""
    save(
        connection,
        ContainerRecord("B-002", location=("Bay 1",)),
        ContainerRecord("B-001", location=("Bay 2",)),
        ContainerRecord("F-1", inside="B-002", location=("Bay 7",)),
        ContainerRecord("F-2", inside="F-1"),
        ContainerRecord("O-1", inside="O-2"),
        ContainerRecord("O-2", inside="O-1"),
    )
    walk = {one.container_number: one for one in load_walk(connection)}
    assert [*walk][:4] == ["B-002", "F-1", "F-2", "B-001"]
    assert (walk["F-2"].location, walk["F-2"].outermost, walk["F-2"].inside) == (
        "Bay 1",
        "B-002",
        "F-1",
    )
    assert {"O-1", "O-2"} < walk.keys()


def test_filled_is_what_holds_something_itself(connection: Connection) -> None:
    """A box that was emptied again holds nothing, and neither does one that only holds a box."""
    save(connection, ContainerRecord("N-2", inside="N-3"), ContainerRecord("N-3"))
    before = load_filled(connection)
    for revision, places in enumerate(((PlaceRecord("X.900"),), ())):
        full = PackingRecord("N-2", places=places)
        save_packing(connection, full, expected_revision=revision, stamp=STAMP)
        assert load_filled(connection) - before == ({"N-2"} if places else set())
