from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from service.cards.compose.warn import (
    gather_cautions,
    gather_hazards,
    is_discreet,
    mark_object,
    warn_outside,
)
from service.cards.parts import Pointer
from service.handling.hazards import HAZARDS
from service.records.record import Hazard, HazardState, ObjectRecord, PlaceRecord
from tests.contents.made import BOX, MUSEUM, hazard, objects, packing

ONE, TWO, THREE = objects(3)


def test_equal_hazards_are_one_warning_with_every_object() -> None:
    """A hazard is said once and points at all it is about, each pointer once."""
    records = [
        replace(ONE, hazards=(hazard("lead"),)),
        replace(TWO, hazards=(hazard("lead"), hazard("lead"))),
    ]
    places = [PlaceRecord("1987.412.1", compartment="A1"), PlaceRecord("1987.412.2")]
    (warn,) = gather_hazards(packing(records, places=places).everything)
    assert warn.heading == "Lead confirmed"
    assert warn.instruction == HAZARDS["lead"].instruction
    assert warn.pointers == (Pointer("A1", "1987.412.1"), Pointer("", "1987.412.2"))


def test_hazards_come_by_urgency_then_by_state() -> None:
    """What can kill comes first, then what is confirmed before what is only presumed."""
    states = (HazardState.UNCHECKED, HazardState.PRESUMED, HazardState.CONFIRMED)
    records = [
        replace(ONE, hazards=(hazard("pests"), *(hazard("lead", state) for state in states))),
        replace(TWO, hazards=(hazard("radium", HazardState.UNCHECKED),)),
    ]
    assert [warn.heading for warn in gather_hazards(packing(records).everything)] == [
        "Radium not checked",
        "Lead confirmed",
        "Lead presumed",
        "Lead not checked",
        "Pests confirmed",
    ]


@pytest.mark.parametrize("code", ["firearm", "ammunition", "controlled-drug"])
def test_a_discreet_hazard_says_only_to_ask(code: str) -> None:
    """Neither what it is nor how certain it is stands outside, in words or in the mark."""
    record = replace(ONE, hazards=(hazard(code),))
    made = packing([record])
    (warn,) = gather_hazards(made.everything)
    assert (warn.heading, warn.mark) == ("Do not open", "ask-first")
    assert warn.instruction == "Ask before opening or moving."
    assert mark_object(made.contents[0]) == (("ask-first", "Do not open"),)


def test_restricted_is_named_restricted() -> None:
    """Human remains are announced with respect, and without a state."""
    made = packing([replace(ONE, hazards=(hazard("human-remains"),))])
    (warn,) = gather_hazards(made.everything)
    assert (warn.heading, warn.mark) == ("Restricted", "restricted")


def test_who_is_discreet() -> None:
    """A restricted record and a discreet hazard both keep title and photo inside."""
    records = [replace(ONE, restricted=True), replace(TWO, hazards=(hazard("firearm"),)), THREE]
    assert [is_discreet(item) for item in packing(records).contents] == [True, True, False]


def test_cautions_for_the_whole_container_come_first_and_name_nobody() -> None:
    """What decides how the container is lifted leads; each caution is said once."""
    records = [
        replace(ONE, cautions=("do-not-fold", "fragile")),
        replace(TWO, cautions=("fragile", "this-way-up", "do-not-tilt")),
    ]
    warns = gather_cautions(packing(records).everything)
    assert [warn.heading for warn in warns] == ["Fragile", "Do not tilt", "Do not fold"]
    assert all(not warn.pointers for warn in warns)


def test_a_caution_without_room_beside_its_object_names_it() -> None:
    """Two marks stand beside an object; what is left over points at it from the strip."""
    codes = ("light-sensitive", "do-not-fold", "support-below")
    warns = gather_cautions(packing([replace(ONE, cautions=codes)]).everything)
    assert {warn.heading: warn.pointers for warn in warns} == {
        "Keep from light": (),
        "Do not fold": (),
        "Support from below": (Pointer("", "1987.412.1"),),
    }


def test_marks_beside_an_object() -> None:
    """Hazards come first by urgency, a mark stands once, the container's cautions stay away."""
    record = replace(
        ONE,
        hazards=(hazard("lead"), hazard("arsenic"), hazard("radium", HazardState.PRESUMED)),
        cautions=("fragile", "do-not-fold"),
    )
    assert mark_object(packing([record]).contents[0]) == (
        ("radiation", "Radium presumed"),
        ("toxic", "Lead confirmed"),
        ("do-not-fold", "Do not fold"),
    )


@pytest.mark.parametrize(
    ("limit", "words"),
    [(0, "Nothing on top"), (1, "At most 1 box on top"), (3, "At most 3 boxes on top")],
)
def test_stacking(limit: int, words: str) -> None:
    """A limit of none is an instruction of its own."""
    assert warn_outside(packing([ONE], replace(BOX, stacking_limit=limit)), MUSEUM).limits == (
        words,
    )


def test_limits_of_the_container() -> None:
    """Heavy end, temporary materials and notes are named; a container without any has none."""
    box = replace(
        BOX, heavy_end="left", temporary_until=date(2027, 3, 1), handling_notes="Two straps"
    )
    assert warn_outside(packing([ONE], box), MUSEUM).limits == (
        "Heavy end: left",
        "Temporary: repack by 1 Mar 2027",
        "Two straps",
    )
    assert warn_outside(packing([ONE]), MUSEUM).limits == ()


def test_nothing_recorded_warns_of_nothing() -> None:
    """A silent record gives no words at all, and so no all-clear."""
    found = warn_outside(packing([ObjectRecord("1")]), MUSEUM)
    assert (found.hazards, found.cautions) == ((), ())


def test_third_hazard_of_an_object_is_pointed_at() -> None:
    """Two marks stand beside an object; a hazard past them knows which objects it must name."""
    worst = (hazard("radium"), hazard("mercury-liquid"), hazard("lead"))
    records = [replace(one, hazards=worst) for one in (ONE, TWO)]
    records.append(replace(THREE, hazards=(hazard("lead"),)))
    warns = {warn.heading: warn for warn in gather_hazards(packing(records).everything)}
    assert warns["Radium confirmed"].unmarked == ()
    assert warns["Lead confirmed"].unmarked == warns["Lead confirmed"].pointers[:2]


def test_own_first_precautions_are_printed_and_part_what_differs() -> None:
    """One hazard worded in two ways is two warnings; the words of a discreet one stay inside."""
    usual, own = Hazard("lead", HazardState.CONFIRMED), "Mittens."
    records = [
        replace(ONE, hazards=(usual,)),
        replace(TWO, hazards=(replace(usual, instruction=own),)),
        replace(THREE, hazards=(Hazard("firearm", HazardState.CONFIRMED, instruction="A gun."),)),
    ]
    warns = gather_hazards(packing(records).everything)
    assert [(warn.heading, warn.instruction) for warn in warns] == [
        ("Do not open", "Ask before opening or moving."),
        ("Lead confirmed", "Gloves. Do not disturb dust. Wash hands."),
        ("Lead confirmed", own),
    ]
