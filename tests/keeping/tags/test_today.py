from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import NamedTuple

import pytest

from service.cards.card import ObjectTag
from service.cards.changes.change import Urgency
from service.keeping.repack import Seen, put_in, take_out
from service.keeping.reprints import list_reprints
from service.keeping.tags.today import compose_today_tags
from service.pages.ruler import Ruler
from service.records.museum.hazard_words import HazardWords
from service.records.museum.language import Language
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
from service.store.save_records import save_records
from tests.keeping.made import BOX, COLLECTION, EMPTY, JAR, LEAD
from tests.keeping.tags.made import attach_tags
from tests.store.made import LATER

OWL = "X.112"


def test_only_the_objects_asked_for_are_worded(connection: Connection, ruler: Ruler) -> None:
    """One tag each, and nothing for a number that no record has."""
    today = compose_today_tags(connection, ruler, [LEAD, JAR, "X.999"])
    assert set(today.cards) == {(JAR, "object-tag", 1), (LEAD, "object-tag", 1)}
    assert today.failed == {}


def test_tags_are_worded_as_printed(connection: Connection, ruler: Ruler) -> None:
    """What guidance presumes is on it, packed or not; a sign without a glyph stands as its code."""
    owl = ObjectRecord(OWL, "Owl \U0001f3fa", "taxidermy", "1920s")
    save_records(connection, Collection(objects=(owl,)), stamp=LATER)
    said = str(compose_today_tags(connection, ruler, [OWL]).cards[OWL, "object-tag", 1])
    assert "Arsenic presumed" in said
    assert "Owl [U+1F3FA]" in said


def test_tags_say_the_museums_own_precautions(connection: Connection, ruler: Ruler) -> None:
    """A tag is printed with them, so it must be compared with them, or it would never be true."""
    museum = replace(COLLECTION.museum, hazard_words=(HazardWords("arsenic", "Ring the bell."),))
    owl = ObjectRecord(OWL, "Owl", hazards=(Hazard("arsenic", HazardState.CONFIRMED),))
    save_records(connection, Collection(museum=museum, objects=(owl,)), stamp=LATER)
    (tag,) = compose_today_tags(connection, ruler, [OWL]).cards.values()
    assert isinstance(tag, ObjectTag)
    assert [warn.instruction for warn in tag.hazards] == ["Ring the bell."]


def test_what_cannot_be_worded_is_told(connection: Connection, ruler: Ruler) -> None:
    """A museum whose address is no lasting one hears why, object by object."""
    museum = replace(COLLECTION.museum, object_address="http://plain.example/{object_number}")
    save_records(connection, Collection(museum=museum), stamp=LATER)
    today = compose_today_tags(connection, ruler, [LEAD])
    assert today.cards == {}
    assert {number: error.code for number, error in today.failed.items()} == {
        LEAD: "address-pattern"
    }


LEAD_RECORD, MUSEUM = COLLECTION.objects[1], COLLECTION.museum
LOOSE = ObjectRecord("X.112", "Owl in a case")
PATTERN = "https://collections.portmerrow.example/o/{object_number}"


@pytest.fixture
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
    "second language": Case(
        _with_museum(second_language=Language.WELSH), EVERY, Urgency.WORDING, "second language"
    ),
    "whom to ask": Case(
        _with_museum(questions=Questions("Registrar")), EVERY, Urgency.WORDING, "Registrar"
    ),
}


@pytest.mark.usefixtures("tagged")
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


@pytest.mark.usefixtures("tagged")
@pytest.mark.parametrize("change", SILENT.values(), ids=SILENT)
def test_a_change_that_shows_on_no_tag_is_not_listed(
    engine: Engine, ruler: Ruler, change: Callable[[Connection], object]
) -> None:
    """Moving an object makes no tag wrong, nor does what a tag does not say."""
    with writing(engine) as connection:
        change(connection)
    assert list_reprints(engine, ruler).out_of_date == ()
