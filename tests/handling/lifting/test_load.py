from __future__ import annotations

from dataclasses import replace

import pytest

from service.contents.packing import Packing
from service.handling.lifting.load import check_load
from service.records.record import ContainerRecord, Weight, WeightBasis
from tests.contents.made import objects, packing

BOX = ContainerRecord("B-9", tare=Weight(1_000), weight_limit_g=9_000)
ONE = objects(1)[0]


def messages(given: Packing) -> list[str]:
    """Give what is noted of a packing."""
    return [finding.message for finding in check_load(given)]


def test_a_box_over_its_limit_is_noted() -> None:
    """Limit, weight, how it is known and what backs the limit are named; the box is found."""
    given = packing([replace(ONE, weight=Weight(8_300))], BOX)
    (finding,) = check_load(given)
    assert (finding.code, finding.severity) == ("over-weight-limit", "warning")
    assert finding.where.container_number == "B-9"
    assert finding.message == (
        "9.3 kg: over 9 kg, the limit of this container (sum of the records)."
        " Keeping to such a limit is common practice, no source."
    )


@pytest.mark.parametrize(
    "box", [BOX, replace(BOX, weight_limit_g=None)], ids=["at its limit", "without one"]
)
def test_a_box_within_its_limit_is_not_noted(box: ContainerRecord) -> None:
    """At the limit, or where there is none, nothing is said."""
    assert messages(packing([replace(ONE, weight=Weight(8_000))], box)) == []


@pytest.mark.parametrize(
    ("weight", "box", "known_as"),
    [
        (Weight(9_500), replace(BOX, tare=None), "at least"),
        (Weight(9_500, WeightBasis.ESTIMATED), BOX, "estimated"),
        (Weight(1), replace(BOX, gross=Weight(9_500)), "weighed"),
    ],
)
def test_too_much_is_too_much_however_it_is_known(
    weight: Weight, box: ContainerRecord, known_as: str
) -> None:
    """What was only partly weighed can be over the limit already."""
    (message,) = messages(packing([replace(ONE, weight=weight)], box))
    assert f"({known_as})" in message


def test_an_unknown_weight_is_not_judged() -> None:
    """Nothing is known, so nothing is said."""
    assert messages(packing([replace(ONE, weight=None)], replace(BOX, tare=None))) == []


def test_what_lies_inside_is_looked_at() -> None:
    """A full folder in a box is found by its own number."""
    inner = replace(BOX, container_number="F-1", inside="B-1")
    given = packing([replace(ONE, weight=Weight(8_300))], inner)
    outer = replace(given, container=ContainerRecord("B-1"), layers=(), nested=(given,))
    assert [finding.where.container_number for finding in check_load(outer)] == ["F-1"]
