"""Tests for the tags on the reprint list."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import NamedTuple

import pytest

from service.cards.changes.change import Urgency
from service.errors import NotFoundError
from service.keeping.repack import Seen, put_in, take_out
from service.keeping.reprints import list_reprints, list_reprints_of, name_reprints
from service.pages.ruler import Ruler
from service.records.museum.lifting import LiftingChoices
from service.records.record import (
    Collection,
    ContainerRecord,
    Hazard,
    HazardState,
    Museum,
    ObjectRecord,
    PlaceRecord,
    Questions,
    Weight,
)
from service.store.handles import Connection, Engine
from service.store.open import writing
from service.store.printed.states import mark_attached, mark_spoiled
from service.store.save_records import save_records
from tests.keeping.made import BOX, COLLECTION, COVER, EMPTY, GOWN, JAR, LEAD, attach_all
from tests.keeping.tags.made import attach_tags, print_tags
from tests.store.made import LATER

LEAD_RECORD, MUSEUM = COLLECTION.objects[1], COLLECTION.museum
LOOSE = ObjectRecord("X.112", "Owl in a case")
PATTERN = "https://collections.portmerrow.example/o/{object_number}"


@pytest.fixture(autouse=True)
def tagged(engine: Engine, ruler: Ruler) -> None:
    """Tie tags to the jar, the lead and an owl that is packed nowhere."""
    with writing(engine) as connection:
        save_records(connection, Collection(objects=(LOOSE,)), stamp=LATER)
        attach_tags(connection, ruler, JAR, LEAD, LOOSE.object_number)


def _with_lead(**changed: object) -> Callable[[Connection], object]:
    record = replace(LEAD_RECORD, **changed)  # type: ignore[arg-type] # named below
    return lambda connection: save_records(connection, Collection(objects=(record,)), stamp=LATER)


def _with_museum(**changed: object) -> Callable[[Connection], object]:
    museum: Museum = replace(MUSEUM, **changed)  # type: ignore[arg-type] # named below
    return lambda connection: save_records(connection, Collection(museum=museum), stamp=LATER)


class Case(NamedTuple):
    """A change, whose tags are listed after it, how soon, and a word of the reasons."""

    change: Callable[[Connection], object]
    numbers: set[str]
    urgency: Urgency
    word: str


EVERY = {JAR, LEAD, LOOSE.object_number}
CONFIRMED = Hazard("lead", HazardState.CONFIRMED)
STRICT = LiftingChoices(waist_above_kg=0.5, two_people_above_kg=3.0)
CASES = {
    "title": Case(_with_lead(title="Hand lead"), {LEAD}, Urgency.WORDING, "Hand lead"),
    "hazard": Case(_with_lead(hazards=(CONFIRMED,)), {LEAD}, Urgency.HAZARD_OR_LIFT, "confirmed"),
    "former numbers": Case(_with_lead(former_numbers=("PM 22",)), {LEAD}, Urgency.WORDING, "PM 22"),
    "weight": Case(_with_lead(weight=Weight(9_000.0)), {LEAD}, Urgency.HAZARD_OR_LIFT, "9.0"),
    "address": Case(
        _with_lead(catalogue_url="https://portmerrow.example/lead"),
        {LEAD},
        Urgency.WORDING,
        "portmerrow.example/lead",
    ),
    "pattern": Case(_with_museum(object_address=PATTERN), EVERY, Urgency.WORDING, "/o/"),
    "lifting": Case(
        _with_museum(lifting=STRICT), {JAR, LEAD}, Urgency.HAZARD_OR_LIFT, "Two people"
    ),
    "whom to ask": Case(
        _with_museum(questions=Questions("Registrar")), EVERY, Urgency.WORDING, "Registrar"
    ),
}


@pytest.mark.parametrize("case", CASES.values(), ids=CASES)
def test_a_change_that_shows_is_listed(engine: Engine, ruler: Ruler, case: Case) -> None:
    """Just the tags that show what changed are listed, with how soon and why."""
    assert list_reprints(engine, ruler).out_of_date == ()
    with writing(engine) as connection:
        case.change(connection)
    found = list_reprints(engine, ruler).out_of_date
    assert {one.reprint.object_number for one in found} == case.numbers
    assert min(one.reprint.urgency for one in found) is case.urgency
    assert any(case.word in reason.words for one in found for reason in one.reprint.changes)


def _moved(connection: Connection) -> None:
    take_out(connection, Seen(BOX, 1), LEAD, stamp=LATER)
    put_in(connection, Seen(EMPTY, 0), PlaceRecord(LEAD, layer=3), stamp=LATER)


def _box_renamed(connection: Connection) -> None:
    box = ContainerRecord(BOX, title="Finds", location=("Store 9",), gross=Weight(9_000.0))
    save_records(connection, Collection(containers=(box,)), stamp=LATER)


SILENT: dict[str, Callable[[Connection], object]] = {
    "a move": _moved,
    "its box": _box_renamed,
    "grams that round away": _with_lead(weight=Weight(4_004.0)),
    "where boxes are": _with_museum(show_location=True),
    "condition": _with_lead(condition="Line brittle"),
}


@pytest.mark.parametrize("change", SILENT.values(), ids=SILENT)
def test_a_change_that_shows_on_no_tag_is_not_listed(
    engine: Engine, ruler: Ruler, change: Callable[[Connection], object]
) -> None:
    """Moving an object makes no tag wrong, nor does what a tag does not say."""
    with writing(engine) as connection:
        change(connection)
    assert list_reprints(engine, ruler).out_of_date == ()


def test_no_tag_is_ever_lacking(engine: Engine, ruler: Ruler) -> None:
    """Whether printed or not, an object without a tag is no fault."""
    with writing(engine) as connection:
        print_tags(connection, ruler, GOWN)
    assert "object-tag" not in {one.kind for one in list_reprints(engine, ruler).unattached}


def test_what_was_printed_before_a_change_is_wrong_once_attached(
    engine: Engine, ruler: Ruler
) -> None:
    """A tag that waited while its record changed is judged when it is tied on; spoiled, no more."""
    with writing(engine) as connection:
        (waiting,) = print_tags(connection, ruler, GOWN)
        gown = ObjectRecord(GOWN, "Regatta dress")
        save_records(connection, Collection(objects=(gown,)), stamp=LATER)
    assert list_reprints(engine, ruler).out_of_date == ()
    with writing(engine) as connection:
        mark_attached(connection, waiting.card_id, stamp=LATER)
    (wrong,) = list_reprints(engine, ruler).out_of_date
    assert wrong.printed.card_id == waiting.card_id
    assert name_reprints(engine, ruler) == {(GOWN, "object-tag", 1)}
    with writing(engine) as connection:
        mark_spoiled(connection, waiting.card_id, stamp=LATER)
    assert list_reprints(engine, ruler).out_of_date == ()
    with pytest.raises(NotFoundError, match="reprint list"):
        name_reprints(engine, ruler)


def test_tags_are_listed_where_their_objects_lie(engine: Engine, ruler: Ruler) -> None:
    """Beside the cards of the box an object lies in now; what lies nowhere comes last."""
    with writing(engine) as connection:
        attach_all(connection, ruler, BOX)
        attach_all(connection, ruler, COVER)
        attach_tags(connection, ruler, GOWN)
        _moved(connection)
        _with_museum(object_address=PATTERN, questions=Questions("Registrar"))(connection)
    found = list_reprints(engine, ruler).out_of_date
    tags = [
        (one.reprint.container_number, one.reprint.object_number)
        for one in found
        if one.reprint.kind == "object-tag"
    ]
    # The box lost its lead, so it is the most urgent stop, and its tag is changed with the rest.
    loose = ("", LOOSE.object_number)
    assert tags == [(BOX, JAR), (EMPTY, LEAD), (COVER, GOWN), loose]
    box = [one.reprint.kind for one in found if one.reprint.container_number == BOX]
    assert box == ["contents-list", "end-label", "end-label", "lid-card", "object-tag"]
    assert found[-1].reprint.location == ()


def test_why_a_container_is_not_listed_tells_of_its_tags(
    connection: Connection, ruler: Ruler
) -> None:
    """Asked for one container the tags of what lies in it are compared, and no others."""
    _with_museum(object_address=PATTERN)(connection)
    found = list_reprints_of(connection, ruler, BOX)
    assert {one.reprint.object_number for one in found.out_of_date} == {JAR, LEAD}
    assert list_reprints_of(connection, ruler, EMPTY).out_of_date == ()


def test_a_tag_that_cannot_be_worded_is_told(engine: Engine, ruler: Ruler) -> None:
    """A mistyped address lists every tag with the reason, and none is to be printed."""
    with writing(engine) as connection:
        _with_museum(object_address="http://plain.example/{object_number}")(connection)
    found = list_reprints(engine, ruler)
    assert {number for number, _ in found.failed_tags} == EVERY
    assert all(one.today is None for one in found.out_of_date)
    with pytest.raises(NotFoundError, match="reprint list"):
        name_reprints(engine, ruler)
