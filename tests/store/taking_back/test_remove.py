from __future__ import annotations

from dataclasses import replace

from sqlalchemy import Connection

from service.records.record import Collection, ContainerRecord, PackingRecord, PlaceRecord
from service.store.kept.checks import IN_ORDER, Check, save_check
from service.store.kept.outs import Slip, note_out
from service.store.packing.save import save_packing
from service.store.printed.card import NewRun
from service.store.printed.runs import save_run
from service.store.save_records import save_records
from service.store.shelf.photos import bring_photos
from service.store.tables import containers, objects
from service.store.taking_back.remove import (
    remove_containers,
    remove_objects,
    why_containers_stay,
    why_objects_stay,
)
from tests.store.made import HAT, LAMP, LEAD, MOMENT, STAMP, rows
from tests.store.printed.made import LID, TAG
from tests.store.shelf.test_photos import brought

ALL = (LEAD, HAT, LAMP)


def test_what_is_used_keeps_an_object(connection: Connection) -> None:
    """A packer's hand, a photo, a slip, a tag, a card that names it: each is a reason in words."""
    assert set(why_objects_stay(connection, ALL, repacked=())) == {LEAD, HAT}
    bring_photos(connection, [brought(LAMP, "x.jpg", "a")], stamp=STAMP)
    assert why_objects_stay(connection, [LAMP], repacked=()) == {LAMP: "a photo was brought for it"}
    note_out(connection, Slip(LEAD, "B-001"), stamp=STAMP)
    save_run(connection, NewRun((LID, TAG)), stamp=STAMP)
    assert (
        why_objects_stay(connection, ALL, repacked=())[LEAD] == "a card that names it was printed"
    )
    assert why_objects_stay(connection, [TAG.object_number], repacked=())


def test_what_is_used_keeps_a_container(connection: Connection) -> None:
    """A packing, a card, a check, what lies in it; one that keeps nothing but another that goes."""
    inner = Collection(containers=(ContainerRecord("B-9", inside="B-003"), ContainerRecord("B-8")))
    save_records(connection, inner, stamp=STAMP)
    boxes = ("B-001", "B-003", "B-8", "B-9")
    assert why_containers_stay(connection, boxes, going=frozenset()) == {
        "B-001": "what was packed in it is part of its history",
        "B-003": "another container lies in it",
    }
    assert set(why_containers_stay(connection, boxes, going=frozenset(boxes))) == {"B-001"}
    packed = PackingRecord("B-9", places=(PlaceRecord(LAMP),))
    save_packing(connection, packed, expected_revision=0, stamp=STAMP)
    assert set(why_containers_stay(connection, boxes, going=frozenset(boxes))) == {
        *("B-001", "B-003", "B-9"),
    }
    check = Check("B-8", MOMENT.date(), "", STAMP, IN_ORDER)
    save_check(connection, check)
    save_run(connection, NewRun((replace(LID, container_number="B-8"),)), stamp=STAMP)
    assert "B-8" in why_containers_stay(connection, boxes, going=frozenset(boxes))


def test_nothing_is_left_of_what_goes(connection: Connection) -> None:
    """Rows, words and notes go with it; the others stay."""
    remove_objects(connection, [LAMP, "nobody"])
    remove_containers(connection, ["B-003", "nobody"])
    assert [row[1] for row in rows(connection, objects)] == [LEAD, HAT]
    assert [row[1] for row in rows(connection, containers)] == ["B-001", "B-002"]
