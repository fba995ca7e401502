from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.papers.removal_slip import NOT_OUTSIDE, warn_of_object
from service.records.record import ObjectRecord, Weight, WeightBasis
from tests.cards.papers.made import BONES, GUN, JAR, LEAD, TAKEN, box, slip_of
from tests.contents.made import MUSEUM


def test_a_slip_says_what_is_gone_and_where_to() -> None:
    """Object, place, who, when, until when and why, and whom to ask; dates cannot be mistaken."""
    slip = slip_of(LEAD)
    assert (slip.slip, slip.object_number, slip.name) == ("3", "1931.14.2", LEAD.title)
    assert (slip.container_number, slip.place) == ("B-042", "layer 1, A1")
    assert (slip.to_whom, slip.taken_by, slip.reason) == (
        "I. Hale, studio",
        "Ada Quill",
        "to be drawn",
    )
    assert (slip.out_on, slip.due_back, slip.parts) == ("25 Nov 2026", "1 Dec 2026", "a, b")
    assert (slip.photo, slip.location) == ("lead.jpg", "Long Store, bay 4")
    assert slip.questions == "Collections desk ext. 214"


def test_hazards_travel_along() -> None:
    """Hazard with its state, weight and cautions, without the number that stands above anyhow."""
    handling = slip_of(LEAD).handling
    assert [(warn.heading, warn.pointers) for warn in handling.hazards] == [("Lead presumed", ())]
    assert (handling.lift.figure_kg, handling.lift.qualifier) == ("1.4", "weighed")
    assert [warn.heading for warn in handling.cautions] == ["Loose parts"]


@pytest.mark.parametrize(
    ("record", "words", "heading"),
    [
        (BONES, "Restricted: ask first", "Restricted"),
        (GUN, "Do not open: ask first", "Do not open"),
    ],
    ids=["human remains", "firearm"],
)
def test_what_is_discreet_stays_so(record: ObjectRecord, words: str, heading: str) -> None:
    """Neither photo, title nor reason stands outside; whom to ask does."""
    slip = slip_of(record, replace(TAKEN, reason="police visit"))
    assert (slip.name, slip.photo, slip.photo_words) == (words, "", "not shown")
    assert slip.reason == NOT_OUTSIDE
    assert [warn.heading for warn in slip.handling.hazards] == [heading]
    assert record.title not in repr(slip)


def test_a_hidden_place_is_not_told() -> None:
    """Where the museum prints no locations the slip names the container alone."""
    assert slip_of(LEAD, museum=MUSEUM).location == ""


@pytest.mark.parametrize(
    ("weight", "expected"),
    [
        (None, ("", "Weight not known", "Weigh before lifting.")),
        (Weight(300.0, WeightBasis.ESTIMATED), ("0.3", "estimated", "Weigh before lifting.")),
        (Weight(300.0), ("0.3", "weighed", "Keep close to the body.")),
    ],
    ids=["unknown", "estimated", "weighed"],
)
def test_a_weight_says_where_it_comes_from(
    weight: Weight | None, expected: tuple[str, str, str]
) -> None:
    """Only a weight that was measured gives a tier."""
    lift = warn_of_object(box(replace(JAR, weight=weight)).contents[0], MUSEUM).lift
    assert (lift.figure_kg, lift.qualifier, lift.advice) == expected
