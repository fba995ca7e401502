from __future__ import annotations

from collections.abc import Callable

import pytest

from service.records.cells.weights import parse_weight, read_weight
from service.records.record import Weight, WeightBasis
from service.records.rows.cell import Cell

ESTIMATED = WeightBasis.ESTIMATED
MEASURED = WeightBasis.MEASURED


@pytest.mark.parametrize(
    ("text", "weight"),
    [
        ("1.2 kg", Weight(1200.0, MEASURED)),
        ("1,2 kg", Weight(1200.0, MEASURED)),
        ("1.2kg", Weight(1200.0, MEASURED)),
        ("300 grams", Weight(300.0, MEASURED)),
        ("250 mg", Weight(0.25, MEASURED)),
        ("7,5 kilos", Weight(7500.0, MEASURED)),
        ("ca. 300 g", Weight(300.0, ESTIMATED)),
        ("c. 300 g", Weight(300.0, ESTIMATED)),
        ("about 400 g", Weight(400.0, ESTIMATED)),
        ("~2 kg", Weight(2000.0, ESTIMATED)),
        ("300 g (est.)", Weight(300.0, ESTIMATED)),
        ("300 g (10.6 oz)", Weight(300.0, MEASURED)),
        # NIST Special Publication 811, appendix B: 1 oz = 28.349523125 g, 1 lb = 453.59237 g.
        ("12 oz", Weight(340.194, MEASURED)),
        ("1 lb", Weight(453.592, MEASURED)),
        ("2 lb 3 oz", Weight(992.234, MEASURED)),
        ("2½ lbs.", Weight(1133.981, MEASURED)),
    ],
)
def test_weight_as_written_is_understood(text: str, weight: Weight) -> None:
    """Units, commas, pounds with ounces and words of doubt are read as a person would."""
    parsed = parse_weight(text)
    assert parsed is not None
    assert parsed.basis is weight.basis
    assert parsed.weight_g == pytest.approx(weight.weight_g, abs=0.001)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("1.2", "unreadable-weight"),
        ("12 cm", "unreadable-weight"),
        ("two stone or so", "unreadable-weight"),
        ("1,250 kg", "unreadable-weight"),
        ("2 kg 3", "unreadable-weight"),
        ("0 g", "impossible-measure"),
        ("-3 kg", "impossible-measure"),
    ],
)
def test_weight_that_is_not_one_is_noted(
    make_cell: Callable[[str], Cell], text: str, code: str
) -> None:
    """A weight that cannot be used is unknown and says why, so that nothing is guessed."""
    cell = make_cell(text)
    assert read_weight(cell) is None
    assert [finding.code for finding in cell.notebook.findings()] == [code]


@pytest.mark.parametrize("text", ["", "unknown", "n/a", "?", "-", "NULL"])
def test_words_for_nothing_are_no_weight(make_cell: Callable[[str], Cell], text: str) -> None:
    """An unknown weight is usual and is not a finding."""
    cell = make_cell(text)
    assert read_weight(cell) is None
    assert cell.notebook.findings() == ()
