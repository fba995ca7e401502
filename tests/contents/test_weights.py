from __future__ import annotations

from dataclasses import replace

import pytest

from service.contents.packing import Packing
from service.contents.weights import Certainty, ContainerWeight, weigh_packing
from service.records.record import ContainerRecord, Weight, WeightBasis
from tests.contents.made import BOX, objects, packing

WEIGHED = objects(2)
UNWEIGHED = replace(WEIGHED[1], weight=None)
TARED = replace(BOX, tare=Weight(800.0))


@pytest.mark.parametrize(
    ("made", "weight"),
    [
        (packing(WEIGHED, TARED), ContainerWeight(1040, Certainty.SUM, 0, 2, tare_known=True)),
        (packing(WEIGHED), ContainerWeight(240, Certainty.AT_LEAST, 0, 2, tare_known=False)),
        (
            packing([WEIGHED[0], UNWEIGHED], TARED),
            ContainerWeight(920, Certainty.AT_LEAST, 1, 2, tare_known=True),
        ),
        (packing([UNWEIGHED]), ContainerWeight(0, Certainty.UNKNOWN, 1, 1, tare_known=False)),
        (
            packing([UNWEIGHED], replace(TARED, gross=Weight(5000.0))),
            ContainerWeight(5000, Certainty.MEASURED, 0, 1, tare_known=True),
        ),
    ],
    ids=["sum", "container never weighed", "an object never weighed", "unknown", "weighed"],
)
def test_a_weight_says_what_it_stands_for(made: Packing, weight: ContainerWeight) -> None:
    """A sum with a gap is only ever a least weight; a measured gross weight wins over any sum."""
    assert weigh_packing(made) == weight


def test_nested_containers_weigh_too() -> None:
    """A nested container counts with its own gross weight, its gaps become the outer one's."""
    weighed = packing([UNWEIGHED], ContainerRecord("T-1", gross=Weight(2000.0)))
    light = packing([replace(UNWEIGHED, object_number="X.9")], ContainerRecord("T-2"))
    outer = replace(packing(WEIGHED[:1], TARED), nested=(weighed, light))
    assert weigh_packing(outer) == ContainerWeight(2920, Certainty.AT_LEAST, 1, 3, tare_known=False)


def test_an_object_in_two_places_weighs_once() -> None:
    """A hat on top and its box below are one weight in the records, and one gap without it."""
    apart = [WEIGHED[0], UNWEIGHED, WEIGHED[0], UNWEIGHED]
    expected = ContainerWeight(920, Certainty.AT_LEAST, 1, 2, tare_known=True)
    assert weigh_packing(packing(apart, TARED)) == expected
    folder = packing(WEIGHED[:1], ContainerRecord("T-1", tare=Weight(80.0)))
    around = replace(packing(WEIGHED, TARED), nested=(folder,))
    assert weigh_packing(around) == ContainerWeight(1120, Certainty.SUM, 0, 2, tare_known=True)


def test_an_estimate_of_the_whole_is_not_called_weighed() -> None:
    """A gross weight that somebody guessed prints as what it is."""
    guessed = replace(BOX, gross=Weight(12_000.0, WeightBasis.ESTIMATED))
    assert weigh_packing(packing(WEIGHED, guessed)).certainty is not Certainty.MEASURED
