from __future__ import annotations

from collections.abc import Callable

import pytest

from service.records.cells.dimensions import parse_dimensions, read_dimensions
from service.records.rows.cell import Cell

CASES: dict[str, list[tuple[str, float]]] = {
    "H 12.5 x W 8 cm": [("height", 125), ("width", 80)],
    "H12.5xW8xD3cm": [("height", 125), ("width", 80), ("depth", 30)],
    "12,5 x 8 x 3 cm": [("", 125), ("", 80), ("", 30)],
    "14,2x9,1 cm": [("", 142), ("", 91)],
    "12cmx8cm": [("", 120), ("", 80)],
    "12 \u00d7 8 cm": [("", 120), ("", 80)],
    "12 by 8 inches": [("", 304.8), ("", 203.2)],
    "12 cm x 8": [("", 120), ("", 80)],
    "3 1/2 in": [("", 88.9)],
    "3-1/2 x 4-1/4 in.": [("", 88.9), ("", 107.95)],
    '12⅜"': [("", 314.325)],
    '5" x 2"': [("", 127), ("", 50.8)],
    "5 ft 6 in": [("", 1676.4)],
    "5'6\"": [("", 1676.4)],
    "Height: 12 cm; Width: 8 cm": [("height", 120), ("width", 80)],
    "H 12 cm; \nW 8 cm": [("height", 120), ("width", 80)],
    "12.5 cm high, 8 cm wide": [("height", 125), ("width", 80)],
    "12 cm (h) x 8 cm (w)": [("height", 120), ("width", 80)],
    "12h x 8w x 3d cm": [("height", 120), ("width", 80), ("depth", 30)],
    "12 x 8 x 3 cm (h x w x d)": [("height", 120), ("width", 80), ("depth", 30)],
    "HxWxD: 12x8x3 cm": [("height", 120), ("width", 80), ("depth", 30)],
    "W. 8 in. x D. 9 in.": [("width", 203.2), ("depth", 228.6)],
    "12 x 8 cm, D 3 cm": [("", 120), ("", 80), ("depth", 30)],
    "Diam. 14 mm": [("diameter", 14)],
    "Ø 18 cm, D 9 cm": [("diameter", 180), ("depth", 90)],
    "1,10 m x 0,85 m": [("", 1100), ("", 850)],
    "30.400000000000002 cm": [("", 304)],
    "H 12.5 cm (4 15/16 in)": [("height", 125)],
    "L 13.8 x W 3 cm (closed)": [("length", 138), ("width", 30)],
    "Overall: ca. 12 x 8 cm": [("", 120), ("", 80)],
    "lid: 3 x 8 cm; base: H 5 x W 8 cm": [
        ("lid", 30),
        ("lid", 80),
        ("base height", 50),
        ("base width", 80),
    ],
    "lead: H 175 x diam. 48 mm; line 18.3 m": [
        ("lead height", 175),
        ("lead diameter", 48),
        ("line", 18300),
    ],
    "0 x 12 cm": [("", 0), ("", 120)],
    "-3 cm": [("", -30)],
}


@pytest.mark.parametrize("text", CASES)
def test_dimensions_as_written_are_understood(text: str) -> None:
    """Labels, fractions, units, brackets and named parts are read as a person would."""
    dimensions = parse_dimensions(text)
    assert dimensions.unread == ()
    assert [(item.label, item.length_mm) for item in dimensions.measures] == CASES[text]


@pytest.mark.parametrize(
    "text",
    [
        "12 x 8",
        "30 fathoms",
        "palm sized",
        "12-14 cm",
        "1,234 mm",
        "12 kg",
        "H cm",
        "12 cm mm 4",
        "[]",
        "(12 cm)",
    ],
)
def test_text_that_is_no_dimension_is_not_guessed(text: str) -> None:
    """Where unit, number or word leave a doubt nothing is read."""
    dimensions = parse_dimensions(text)
    assert dimensions.measures == ()
    assert dimensions.unread


def test_good_measures_stay_beside_bad_ones(make_cell: Callable[[str], Cell]) -> None:
    """What was understood is kept, and the finding says both what was and what was not."""
    cell = make_cell("H 12 cm; weight 3 kg; W 0 cm")
    assert [item.length_mm for item in read_dimensions(cell)] == [120.0]
    unread, impossible = cell.notebook.findings()
    assert (unread.code, impossible.code) == ("unreadable-dimensions", "impossible-measure")
    assert "weight 3 kg" in unread.message
    assert "height 120 mm" in unread.message
