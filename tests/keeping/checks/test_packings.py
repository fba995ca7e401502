"""Tests for checking how a container of a store is packed now."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from service.keeping.checks.packings import check_container
from service.pages.ruler import Ruler
from service.records.record import (
    Collection,
    ContainerRecord,
    Lid,
    ObjectRecord,
    PackingRecord,
    PlaceRecord,
)
from service.store.handles import Connection
from service.store.save_records import save_records
from tests.keeping.made import BOX, COLLECTION, COVER, EMPTY, GOWN, JAR, LEAD, attach_all
from tests.store.made import LATER

DAY = date(2026, 11, 30)


def codes(connection: Connection, number: str, day: date = DAY) -> list[tuple[str, str]]:
    """Give code and object of what is noticed."""
    return [
        (one.code, one.where.object_number)
        for one in check_container(connection, number, today=day)
    ]


def test_what_is_well_packed_or_silent_gives_nothing(connection: Connection) -> None:
    """The heavy lead lies at the bottom; of the gown nothing is recorded."""
    assert [codes(connection, number) for number in (BOX, COVER, EMPTY, "unknown")] == [[]] * 4


def test_the_current_state_is_judged(connection: Connection) -> None:
    """A gown whose shoulders turn out to be weak hangs against its record."""
    weak = replace(COLLECTION.objects[2], hang_factors=("weak-shoulders",))
    box = replace(COLLECTION.containers[0], temporary_until=DAY)
    save_records(connection, Collection(objects=(weak,), containers=(box,)), stamp=LATER)
    assert codes(connection, COVER) == [("hung-against-advice", GOWN)]
    assert codes(connection, BOX) == [("repack-overdue", "")]
    assert codes(connection, BOX, date(2026, 11, 29)) == []


def test_an_attached_card_covers_a_clear_lid(connection: Connection, ruler: Ruler) -> None:
    """The box got another lid after its card was fixed to the old one."""
    attach_all(connection, ruler, BOX)
    assert codes(connection, BOX) == []
    clear = replace(COLLECTION.containers[0], lid=Lid.CLEAR)
    save_records(connection, Collection(containers=(clear,)), stamp=LATER)
    assert codes(connection, BOX) == [("covered-lid", "")]


def test_the_museum_turns_checks_off(connection: Connection) -> None:
    """Choices of the museum are kept with the store."""
    oak, lead = (
        replace(one, materials=(material,))
        for one, material in zip(COLLECTION.objects[:2], ("oak", "lead"), strict=True)
    )
    save_records(connection, Collection(objects=(oak, lead)), stamp=LATER)
    assert codes(connection, BOX) == [("conflicting-materials", JAR)]
    museum = replace(COLLECTION.museum, packing_checks_off=("conflicting-materials",))
    save_records(connection, Collection(museum=museum), stamp=LATER)
    assert codes(connection, BOX) == []
    assert lead.object_number == LEAD


def test_what_lies_in_a_folder_meets_the_box_around_it(connection: Connection) -> None:
    """Whoever packs the folder hears what its wool does to the silver in the box, and no more."""
    box = replace(COLLECTION.containers[0], temporary_until=DAY)
    folder = ContainerRecord("F-1", inside=BOX)
    jar = replace(COLLECTION.objects[0], materials=("silver",))
    flag = ObjectRecord("N.1", materials=("wool",))
    packed = PackingRecord("F-1", 1, (PlaceRecord("N.1"),))
    made = Collection(objects=(jar, flag), containers=(box, folder), packings=(packed,))
    save_records(connection, made, stamp=LATER)
    (finding,) = check_container(connection, "F-1", today=DAY)
    assert (finding.code, str(finding.where)) == ("conflicting-materials", f"{BOX}, N.1")
    assert set(codes(connection, BOX)) == {("conflicting-materials", "N.1"), ("repack-overdue", "")}
