from __future__ import annotations

import pytest

from service.records.cells.weights import parse_weight
from service.records.record import Weight, WeightBasis
from service.web.views.shell.weights import write_weight


@pytest.mark.parametrize(
    ("weight", "text"),
    [
        (Weight(6200.0), "6.2 kg"),
        (Weight(5.0), "0.005 kg"),
        (Weight(12_000.0, WeightBasis.ESTIMATED), "about 12 kg"),
    ],
)
def test_a_weight_is_read_as_it_was_written(weight: Weight, text: str) -> None:
    """Estimates stay estimates."""
    assert write_weight(weight) == text
    assert parse_weight(text) == weight


def test_what_is_not_known_is_empty() -> None:
    """No figure stands for it."""
    assert write_weight(None) == ""
