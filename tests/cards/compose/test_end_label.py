from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.compose.end_label import compose_end_labels
from service.records.record import ContainerKind, ContainerRecord, Weight
from tests.contents.made import BOX, MUSEUM, hazard, objects, packing

HEAVY = replace(BOX, gross=Weight(14_000))


@pytest.mark.parametrize(
    ("kind", "sides"),
    [(ContainerKind.BOX, 2), (ContainerKind.TUBE, 2), (ContainerKind.DRAWER, 1)],
)
def test_sides(kind: ContainerKind, sides: int) -> None:
    """What can be turned round gets a label on both ends, numbered."""
    labels = compose_end_labels(packing(objects(1), ContainerRecord("C-1", kind)), MUSEUM)
    assert [(label.side, label.sides) for label in labels] == [
        (side, sides) for side in range(1, sides + 1)
    ]


def test_only_what_the_hands_must_know_is_marked() -> None:
    """Hazards come first; a caution for one object inside stays on the lid."""
    record = replace(objects(1)[0], hazards=(hazard("lead"),), cautions=("do-not-fold", "keep-dry"))
    label = compose_end_labels(packing([record]), MUSEUM)[0]
    assert [warn.heading for warn in label.marks] == ["Lead confirmed", "Keep dry"]
    assert (label.count_words, label.head.query) == ("1 object", "")


def test_a_label_gives_advice_without_its_reason() -> None:
    """Another shelf that asks for the same makes no label wrong."""
    labels = [
        compose_end_labels(packing(objects(1), replace(HEAVY, hand_height_mm=height_mm)), MUSEUM)
        for height_mm in (1000.0, 1100.0, 900.0)
    ]
    assert [label[0].lift.advice for label in labels] == [
        "Two people or a trolley.",
        "Two people or a trolley.",
        "One person: at waist height, close to the body.",
    ]
    assert labels[0] == labels[1]
