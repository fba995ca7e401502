from __future__ import annotations

import pytest

from service.records.record import PlaceRecord as Place
from service.store.packing.occupancy import Clash, Places, find_clashes, settle

WHOLE, A, B, AB = (Place("1", parts) for parts in ((), ("a",), ("b",), ("a", "b")))
OTHER = Place("2")
CASES: dict[str, tuple[Place, Place, bool]] = {
    "whole and whole": (WHOLE, WHOLE, True),
    "whole and part": (WHOLE, A, True),
    "part and whole": (A, WHOLE, True),
    "same part": (AB, B, True),
    "other parts": (A, B, False),
    "other objects": (WHOLE, OTHER, False),
}


@pytest.mark.parametrize(("there", "here", "clashes"), CASES.values(), ids=CASES)
def test_a_part_lies_in_one_container(there: Place, here: Place, *, clashes: bool) -> None:
    """An object, or a part of it, cannot lie in a second container."""
    found = find_clashes({"X": (there,)}, {"Y": (here,)})
    assert found == ((Clash("1", "Y", "X"),) if clashes else ())


def test_one_container_may_hold_it_twice() -> None:
    """Where in its container a thing lies is not this rule's business."""
    assert find_clashes({}, {"X": (WHOLE, A)}) == ()


SETTLED: dict[str, tuple[dict[str, Places], dict[str, Places], set[str]]] = {
    "a move seen from the far end first": (
        {"X": (WHOLE,)},
        {"Y": (WHOLE,), "X": ()},
        set(),
    ),
    "two exchange": ({"X": (WHOLE,), "Y": (OTHER,)}, {"X": (OTHER,), "Y": (WHOLE,)}, set()),
    "two want it": ({}, {"X": (WHOLE,), "Y": (WHOLE,)}, {"Y"}),
    "a refusal stands in another's way": (
        {"X": (WHOLE,), "Z": (OTHER,)},
        {"X": (OTHER,), "Y": (WHOLE,)},
        {"X", "Y"},
    ),
    "a refusal stands in nobody's way": (
        {"Z": (OTHER,)},
        {"X": (OTHER, WHOLE), "Y": (WHOLE,)},
        {"X"},
    ),
}


@pytest.mark.parametrize(("now", "wanted", "refused"), SETTLED.values(), ids=SETTLED)
def test_settling(now: dict[str, Places], wanted: dict[str, Places], refused: set[str]) -> None:
    """As many containers as can get what they are to hold; the others keep what they have."""
    clashes = settle(now, wanted)
    assert {clash.container_number for clash in clashes} == refused
    accepted = {name: places for name, places in wanted.items() if name not in refused}
    assert find_clashes({}, {**now, **accepted}) == ()
