"""All that the page of an object tells, gathered from the store."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime

from service.findings import Finding
from service.handling.cautions import find_caution
from service.handling.hazards import HazardEntry, find_hazard, name_hazard, reword_hazards
from service.handling.presume import presume_hazards
from service.keeping.reprints import list_reprints_of_object
from service.records.record import Collection, Hazard, ObjectRecord
from service.store.handles import Connection
from service.store.kept.outs import Out, load_outs
from service.store.load_records import load_museum, load_object
from service.store.packing.stays import load_object_history
from service.store.printed.runs import load_attached_tags
from service.store.shelf.photos import find_photo_files
from service.store.shelf.shown import ShownPhoto, load_shown_of
from service.web.store.counter import Counter
from service.web.store.matching import tag_record
from service.web.store.records.finding import find_places
from service.web.store.records.shapes import PlaceView
from service.web.views.pack.lying import list_lacking

_STAYS = {"put in", "taken out", "taken out against a slip", "brought back"}


@dataclass(frozen=True, slots=True)
class HazardLine:
    """A hazard with its words; one that is not recorded was presumed from kind and date."""

    hazard: Hazard
    entry: HazardEntry
    name: str
    instruction: str
    ask: str
    is_recorded: bool
    is_overdue: bool


@dataclass(frozen=True, slots=True)
class Stay:
    """Something that happened to where an object lies: what, which container, when and who."""

    verb: str
    container_number: str
    at: datetime
    actor: str


@dataclass(frozen=True, slots=True)
class TagState:
    """The tag of an object: whether one is attached, and why it is wrong, if it is."""

    is_attached: bool
    reasons: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SeenObject:
    """An object as its page shows it; `tag` names the state that was seen."""

    record: ObjectRecord
    tag: str
    photos: tuple[ShownPhoto, ...]
    removed: tuple[ShownPhoto, ...]
    hazards: tuple[HazardLine, ...]
    cautions: tuple[str, ...]
    places: tuple[PlaceView, ...]
    outs: tuple[Out, ...]
    stays: tuple[Stay, ...]
    object_tag: TagState
    findings: tuple[Finding, ...]


def see_object(counter: Counter, number: str) -> SeenObject:
    """Gather an object.

    Raises:
        NotFoundError: When there is none of that number.
    """
    today = counter.now().date()
    with counter.measuring() as ruler, counter.reading() as connection:
        record = load_object(connection, number)
        shown = load_shown_of(connection, number)
        attached = load_attached_tags(connection, [number])
        found = list_reprints_of_object(connection, ruler, number)
        wrong = [change.words for one in found.out_of_date for change in one.reprint.changes]
        museum = load_museum(connection)
        worded = reword_hazards(Collection(museum, (record,)))
        presumed, notes = presume_hazards(worded)
        return SeenObject(
            record,
            tag_record(record),
            tuple(one for one in shown if not one.is_removed),
            tuple(one for one in shown if one.is_removed),
            _lines(presumed, record, today),
            tuple(find_caution(code).name for code in record.cautions),
            tuple(find_places(connection, number)),
            load_outs(connection, object_number=number),
            _load_stays(connection, number),
            TagState(bool(attached), tuple(dict.fromkeys(wrong))),
            (*_lacking(connection, record), *notes),
        )


def _lines(presumed: Collection, record: ObjectRecord, today: date) -> tuple[HazardLine, ...]:
    """Word the hazards of an object; those behind the recorded ones were presumed."""
    recorded = len(record.hazards)
    return tuple(
        HazardLine(
            hazard,
            entry := find_hazard(hazard.code),
            name_hazard(hazard),
            hazard.instruction or entry.instruction,
            entry.consult.in_region(presumed.museum.region),
            at < recorded,
            hazard.review_on is not None and hazard.review_on < today,
        )
        for at, hazard in enumerate(presumed.objects[0].hazards)
    )


def _lacking(connection: Connection, record: ObjectRecord) -> tuple[Finding, ...]:
    number = record.object_number
    photos = find_photo_files(connection, [number]).get(number, ())
    return list_lacking(record, photos, number)


def _load_stays(connection: Connection, number: str) -> tuple[Stay, ...]:
    """Load where it came and went, the latest first."""
    return tuple(
        Stay(
            event.entry.verb,
            event.entry.container_number,
            event.stamp.at,
            event.stamp.actor,
        )
        for event in reversed(load_object_history(connection, number))
        if event.entry.verb in _STAYS
    )
