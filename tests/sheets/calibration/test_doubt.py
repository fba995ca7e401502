from __future__ import annotations

import random
from dataclasses import replace

import pytest

from service.sheets.calibration.doubt import find_doubts
from service.sheets.calibration.ruler_sheet import crosses_on
from service.sheets.stocks import A4, A6
from tests.sheets.calibration.simulated import any_printer, measure

RUNS = 200


@pytest.mark.parametrize("count", [6, 7, 8])
def test_the_wrong_cross_is_named(count: int) -> None:
    """A measure that is 5 mm off is named, alone, in 95 of 100 sheets and more."""
    rng = random.Random(count)  # noqa: S311 - no secret
    named = 0
    for _ in range(RUNS):
        readings = measure(any_printer(rng), rng.sample(crosses_on(A4), count), rng)
        at = rng.randrange(len(readings))
        off_mm = rng.choice((-5.0, 5.0))
        wrong = replace(readings[at], measured_mm=readings[at].measured_mm + off_mm)
        readings[at] = wrong
        doubts = find_doubts(readings)
        named += [doubt.reading for group in doubts for doubt in group] == [wrong]
    assert named >= 0.95 * RUNS


@pytest.mark.parametrize("count", [4, 5])
def test_with_few_crosses_the_wrong_one_is_among_those_named(count: int) -> None:
    """With four or five crosses the wrong one is at least among those in doubt."""
    rng = random.Random(count)  # noqa: S311 - no secret
    for _ in range(RUNS):
        readings = measure(any_printer(rng), crosses_on(A4)[:count], rng)
        at = rng.randrange(len(readings))
        wrong = replace(readings[at], measured_mm=readings[at].measured_mm + 5)
        readings[at] = wrong
        assert wrong in [doubt.reading for group in find_doubts(readings) for doubt in group]


@pytest.mark.parametrize("page", [A4, A6], ids=["A4", "A6"])
def test_honest_measures_are_not_doubted(page: object) -> None:
    """Measures to a quarter of a millimetre are never refused, with any number of crosses."""
    rng = random.Random(11)  # noqa: S311 - no secret
    crosses = crosses_on(A4 if page == A4 else A6)
    for _ in range(RUNS):
        chosen = rng.sample(crosses, rng.randint(4, len(crosses)))
        assert find_doubts(measure(any_printer(rng), chosen, rng)) == ()


def test_says_what_the_others_expect() -> None:
    """What is expected of the wrong measure is what it would have been, to half a millimetre."""
    rng = random.Random(5)  # noqa: S311 - no secret
    readings = measure(any_printer(rng), crosses_on(A4), rng)
    readings[5] = replace(readings[5], measured_mm=readings[5].measured_mm + 5)
    ((doubt,),) = find_doubts(readings)
    assert doubt.expected_mm == pytest.approx(readings[5].measured_mm - 5, abs=0.5)


def test_two_wrong_measures_are_both_named() -> None:
    """One slip across and one down at different crosses are found one after the other."""
    rng = random.Random(6)  # noqa: S311 - no secret
    readings = measure(any_printer(rng), crosses_on(A4), rng)
    for at in (2, 9):
        readings[at] = replace(readings[at], measured_mm=readings[at].measured_mm + 6)
    doubts = find_doubts(readings)
    assert {group[0].reading for group in doubts} == {readings[2], readings[9]}
