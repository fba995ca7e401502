from __future__ import annotations

import pytest

from service.geometry import Rect
from service.pages.page import TextBlock, TextStyle

STYLE = TextStyle(10.0, leading_ratio=1.2)


def block(*lines: str, whole: str) -> TextBlock:
    """Make a block of lines."""
    return TextBlock("caption", Rect(0, 0, 40, 10), lines, STYLE, whole)


def test_leading_in_mm() -> None:
    """12 points are 4.2333 mm: a sixth of an inch (ISO 32000)."""
    assert STYLE.leading_mm == pytest.approx(25.4 / 6)


@pytest.mark.parametrize(
    ("made", "shortened"),
    [
        (block("Brass", "buck…", whole="Brass buckle"), True),
        (block("Brass", "buckle", whole="Brass buckle"), False),
        (block("So it goes…", whole="So it goes…"), False),
        (block(whole=""), False),
    ],
)
def test_what_counts_as_shortened(made: TextBlock, *, shortened: bool) -> None:
    """An ellipsis of the record's own is no sign of a cut."""
    assert made.is_shortened is shortened
