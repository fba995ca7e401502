from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.compose.asked.object_tag import compose_object_tag, compose_object_tags
from service.cards.kinds import OBJECT_TAG, kinds_on_request
from service.handling.lifting import NO_ADVICE
from service.records.record import (
    ContainerRecord,
    HazardState,
    PlaceRecord,
    Questions,
    Weight,
    WeightBasis,
)
from tests.contents.made import BOX, MUSEUM, hazard, objects, packing

ONE, TWO = objects(2)


def test_a_tag_says_what_the_record_says() -> None:
    """Number and former numbers, name, hazards with their state, cautions, and the address."""
    record = replace(
        ONE,
        former_numbers=("PM 22",),
        hazards=(hazard("lead", HazardState.PRESUMED),),
        cautions=("fragile",),
    )
    (tag,) = compose_object_tags(packing([record]), MUSEUM)
    assert (tag.object_number, tag.former_numbers, tag.title) == (
        "1987.412.1",
        ("PM 22",),
        ONE.title,
    )
    assert [(warn.heading, warn.pointers) for warn in tag.hazards] == [("Lead presumed", ())]
    assert [warn.heading for warn in tag.cautions] == ["Fragile"]
    assert tag.head.address == "https://collections.example/o/1987.412.1"
    assert (tag.head.query, tag.head.questions) == ("", "Collections desk ext. 214")


def test_moving_an_object_makes_no_tag_wrong() -> None:
    """Neither box, place, revision nor whom the box asks is on it."""
    other = ContainerRecord("X-9", questions=Questions("Registrar"), location=("Elsewhere",))
    here = packing([ONE], BOX, places=[PlaceRecord(ONE.object_number, compartment="A1")])
    place = PlaceRecord(ONE.object_number, ("a",), 3, "C3", "in a bag")
    there = packing([ONE], other, places=[place], revision=9)
    assert compose_object_tags(here, MUSEUM) == compose_object_tags(there, MUSEUM)


@pytest.mark.parametrize(
    ("weight", "figure", "advice"),
    [
        (None, "", "Weigh before lifting."),
        (Weight(3_000.0, WeightBasis.ESTIMATED), "3.0", "Weigh before lifting."),
        (Weight(3_001.0), "3.0", "Not above the shoulder at arm's length."),
        (Weight(17_000.0), "17.0", "Two people or a trolley."),
    ],
)
def test_lifting_is_told_where_it_asks_for_care(
    weight: Weight | None, figure: str, advice: str
) -> None:
    """HSE INDG143 (2020): its figures begin above 3 kg; what is not known is to be weighed."""
    (tag,) = compose_object_tags(packing([replace(ONE, weight=weight)]), MUSEUM)
    assert (tag.lift.figure_kg, tag.lift.advice) == (figure, advice)


def test_what_is_known_to_be_light_says_nothing_of_its_weight() -> None:
    """So that grams make no tag wrong."""
    (tag,) = compose_object_tags(packing([replace(ONE, weight=Weight(3_000.0))]), MUSEUM)
    assert tag.lift == NO_ADVICE


def test_parts_in_two_places_have_one_tag() -> None:
    """A tag is of an object, not of a place."""
    places = [
        PlaceRecord(ONE.object_number, ("a",)),
        PlaceRecord(ONE.object_number, ("b",), 2),
        PlaceRecord(TWO.object_number),
    ]
    tags = compose_object_tags(packing([ONE, TWO], places=places), MUSEUM)
    assert [tag.object_number for tag in tags] == ["1987.412.1", "1987.412.2"]


@pytest.mark.parametrize(
    ("record", "title"),
    [
        (replace(ONE, title="Revolver", hazards=(hazard("firearm"),)), "Do not open: ask first"),
        (replace(ONE, title="Mask", restricted=True), "Restricted: ask first"),
    ],
)
def test_what_may_not_be_named_is_not(record: object, title: str) -> None:
    """A tag is seen by whoever opens the box."""
    (tag,) = compose_object_tags(packing([record]), MUSEUM)  # type: ignore[list-item] # a record
    assert tag.title == title
    assert "Revolver" not in str(tag)
    assert "irearm" not in str(tag)


def test_an_object_without_a_record_gets_none() -> None:
    """What is packed and in no record has nothing to say; a bare tag would hide that."""
    places = [PlaceRecord(ONE.object_number), PlaceRecord("X.999")]
    made = packing([ONE], places=places)
    assert [tag.object_number for tag in compose_object_tags(made, MUSEUM)] == [ONE.object_number]
    alone = packing([], places=[PlaceRecord("X.999")])
    assert OBJECT_TAG not in kinds_on_request(alone)


def test_a_tag_needs_no_packing() -> None:
    """Its record is enough, and gives the same tag as in any box."""
    (tag,) = compose_object_tags(packing([ONE]), MUSEUM)
    assert compose_object_tag(ONE, MUSEUM) == tag
