"""Tests for putting places into another order."""

from __future__ import annotations

import pytest

from service.contents.order import Step, find_sharing, order_places, step_place
from service.records.record import PlaceRecord

A, B, C = PlaceRecord("A"), PlaceRecord("B"), PlaceRecord("C", layer=2)
GRIDDED = PlaceRecord("D", compartment="B3")
PLACES = (A, GRIDDED, B, C)

STEPS = {
    "up past what lies at another spot": (B, Step.UP, ["B", "D", "A", "C"]),
    "down": (A, Step.DOWN, ["B", "D", "A", "C"]),
    "first goes no further up": (A, Step.UP, ["A", "D", "B", "C"]),
    "last goes no further down": (B, Step.DOWN, ["A", "D", "B", "C"]),
    "alone in its compartment": (GRIDDED, Step.UP, ["A", "D", "B", "C"]),
}


@pytest.mark.parametrize(("place", "step", "wanted"), STEPS.values(), ids=STEPS)
def test_a_step_is_among_those_at_the_same_spot(
    place: PlaceRecord, step: Step, wanted: list[str]
) -> None:
    """Up and down change places with the next one of the same layer and compartment."""
    assert [one.object_number for one in step_place(PLACES, place, step)] == wanted


LAYERS = {
    "down": (A, Step.LAYER_DOWN, 2),
    "up": (C, Step.LAYER_UP, 1),
    "above the top there is nothing": (A, Step.LAYER_UP, 1),
    "alone at the bottom": (C, Step.LAYER_DOWN, 2),
}


@pytest.mark.parametrize(("place", "step", "layer"), LAYERS.values(), ids=LAYERS)
def test_a_step_between_layers(place: PlaceRecord, step: Step, layer: int) -> None:
    """Nothing goes above the top layer, and what lies alone opens no further one."""
    found = step_place(PLACES, place, step)
    assert next(one.layer for one in found if one.object_number == place.object_number) == layer
    assert len(found) == len(PLACES)


def test_a_new_lowest_layer_is_opened_by_one_of_several() -> None:
    """Of two at the bottom one can go further down."""
    assert step_place((A, B), B, Step.LAYER_DOWN)[1].layer == 2


def test_a_whole_order_is_taken_over() -> None:
    """Each in the layer wanted; what is not named stays, what is not there is left out."""
    found = order_places(PLACES, [(C, 1), (A, 3), (PlaceRecord("Z"), 1)])
    assert [(one.object_number, one.layer) for one in found] == [
        ("C", 1),
        ("D", 1),
        ("B", 1),
        ("A", 3),
    ]
    assert order_places((A, A), [(A, 2)]) == (PlaceRecord("A", layer=2), A)


def test_what_lies_there_already_is_found() -> None:
    """A whole object shares with each of its parts, and other parts with none."""
    lid = PlaceRecord("H", ("a",))
    assert find_sharing((A, lid), PlaceRecord("H")) == lid
    assert find_sharing((A, lid), PlaceRecord("H", ("a", "b"))) == lid
    assert find_sharing((A, lid), PlaceRecord("H", ("b",))) is None
    assert find_sharing((A, lid), PlaceRecord("B")) is None
