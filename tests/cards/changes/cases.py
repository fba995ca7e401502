"""Pairs of cards, one as printed and one as of today, made by changing one record."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date

from service.cards.card import Card
from service.cards.changes.change import Change
from service.cards.changes.list_changes import list_changes
from service.cards.compose.asked.object_tag import compose_object_tags
from service.cards.compose.asked.shoulder_tag import compose_shoulder_tag
from service.cards.compose.asked.side_card import compose_side_card
from service.cards.compose.asked.warning_label import compose_warning_label
from service.cards.compose.contents_list import compose_contents_list
from service.cards.compose.cover_card import compose_cover_card
from service.cards.compose.end_label import compose_end_labels
from service.cards.compose.lid_card import compose_lid_card
from service.contents.arrange import arrange_packings
from service.contents.packing import Packing
from service.records.record import (
    Collection,
    ContainerRecord,
    Museum,
    ObjectRecord,
    PackingRecord,
    PhotoReference,
    PlaceRecord,
    Weight,
)
from tests.contents.made import MUSEUM

JAR = ObjectRecord(
    "1987.412.9", "Bait jar", weight=Weight(900.0), photos=(PhotoReference("jar.jpg"),)
)
LEAD = ObjectRecord("1931.14.2", "Lead line", weight=Weight(4_000.0))
BOX = ContainerRecord("B-042", title="Small finds", tare=Weight(700.0))
PLACES = (PlaceRecord("1987.412.9", compartment="A1"), PlaceRecord("1931.14.2", layer=2))

KINDS: dict[str, Callable[[Packing, Museum], Card]] = {
    "lid": compose_lid_card,
    "end": lambda packing, museum: compose_end_labels(packing, museum)[0],
    "cover": compose_cover_card,
    "list": compose_contents_list,
    "warning": compose_warning_label,
    "side": compose_side_card,
    "shoulder": compose_shoulder_tag,
    "tag": lambda packing, museum: compose_object_tags(packing, museum)[0],
}


def collection(
    *objects: ObjectRecord,
    box: ContainerRecord = BOX,
    places: tuple[PlaceRecord, ...] = PLACES,
    museum: Museum = MUSEUM,
) -> Collection:
    """Give a box with two objects; objects that are named take the place of those."""
    known = {record.object_number: record for record in (JAR, LEAD, *objects)}
    packing = PackingRecord(BOX.container_number, 3, places, "I. Hale", date(2026, 10, 14))
    return Collection(museum, tuple(known.values()), (box,), (packing,))


def compose(kind: str, records: Collection) -> Card:
    """Word one card of the box."""
    (packing,) = arrange_packings(records).packings
    return KINDS[kind](packing, records.museum)


def compare(kind: str, before: Collection, after: Collection) -> tuple[Change, ...]:
    """Say why the card printed before is wrong after."""
    return list_changes(compose(kind, before), compose(kind, after))


def words(kind: str, after: Collection, *, before: Collection | None = None) -> list[str]:
    """Give the reasons in words."""
    return [change.words for change in compare(kind, before or collection(), after)]


def changed(record: ObjectRecord, **fields: object) -> ObjectRecord:
    """Give an object described otherwise."""
    return replace(record, **fields)  # type: ignore[arg-type] # the tests name real fields
