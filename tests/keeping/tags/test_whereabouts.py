from __future__ import annotations

from service.keeping.tags.whereabouts import Whereabouts, locate_containers, locate_objects
from service.records.record import Collection, ContainerRecord, PackingRecord, PlaceRecord
from service.store.handles import Connection
from service.store.save_records import save_records
from tests.keeping.made import BOX, JAR, LEAD
from tests.store.made import LATER

HERE = Whereabouts(BOX, ("Store 2", "Bay 4"))


def test_objects_and_containers_are_where_they_lie(connection: Connection) -> None:
    """An object is where its box is; one that is packed nowhere is not told."""
    assert locate_objects(connection, [LEAD, "X.112"]) == {LEAD: HERE}
    assert locate_containers(connection, [BOX, "B-999"]) == {BOX: HERE}


def test_parts_that_lie_apart_are_found_at_the_first(connection: Connection) -> None:
    """Of two boxes the one that comes first on the way; one that stands nowhere comes last."""
    number = "PMM.9"
    boxes = (
        ContainerRecord("B-1"),
        ContainerRecord("B-2", location=("Store 2", "Bay 10")),
        ContainerRecord("B-3", location=("Store 2", "Bay 9")),
    )
    packings = tuple(
        PackingRecord(box.container_number, 1, (PlaceRecord(number, (part,)),))
        for box, part in zip(boxes, "abc", strict=True)
    )
    save_records(connection, Collection(containers=boxes, packings=packings), stamp=LATER)
    assert locate_objects(connection, [number, JAR]) == {
        number: Whereabouts("B-3", ("Store 2", "Bay 9")),
        JAR: HERE,
    }
