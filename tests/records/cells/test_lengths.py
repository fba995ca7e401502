from __future__ import annotations

from collections.abc import Callable

import pytest

from service.geometry import Size
from service.records.cells.lengths import read_length_mm, read_size
from service.records.rows.cell import Cell


@pytest.mark.parametrize(
    ("text", "size"),
    [
        ("400 x 300 mm", Size(400, 300)),
        ("W 40 x H 30 cm", Size(400, 300)),
        ("H 30 x W 40 cm", Size(400, 300)),
        ("", None),
    ],
)
def test_size_is_width_by_height(
    make_cell: Callable[[str], Cell], text: str, size: Size | None
) -> None:
    """Labels win over the order, and without labels width comes first."""
    cell = make_cell(text)
    assert read_size(cell) == size
    assert cell.notebook.findings() == ()


@pytest.mark.parametrize("text", ["400 mm", "1 x 2 x 3 cm", "400 x 300", "large", "0 x 30 mm"])
def test_size_needs_two_lengths(make_cell: Callable[[str], Cell], text: str) -> None:
    """Anything but two lengths is noted with an example of what to write."""
    cell = make_cell(text)
    assert read_size(cell) is None
    (finding,) = cell.notebook.findings()
    assert "400 x 300 mm" in finding.advice


@pytest.mark.parametrize(
    ("text", "length_mm", "findings"),
    [("900 mm", 900.0, 0), ("1.5 m", 1500.0, 0), ("", None, 0), ("900", None, 1), ("0 m", None, 1)],
)
def test_length_is_one_number_with_a_unit(
    make_cell: Callable[[str], Cell], text: str, length_mm: float | None, findings: int
) -> None:
    """A height of a shelf is one length, or it is noted."""
    cell = make_cell(text)
    assert read_length_mm(cell) == length_mm
    assert len(cell.notebook.findings()) == findings
