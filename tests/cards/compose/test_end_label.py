from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.compose.end_label import compose_end_labels
from service.records.record import ContainerKind, ContainerRecord
from tests.contents.made import MUSEUM, hazard, objects, packing


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
