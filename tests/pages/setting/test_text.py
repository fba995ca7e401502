from __future__ import annotations

import pytest

from service.pages.page import TextStyle
from service.pages.setting.text import (
    ELLIPSIS,
    Spot,
    break_number,
    longest_piece_mm,
    set_number,
    set_text,
)
from service.units import points_from_mm
from tests.pages.fake_ruler import FakeRuler

RULER = FakeRuler()
STYLE = TextStyle(points_from_mm(2.0), leading_ratio=1.25)
"""Every character of this style is 1 mm wide in the plain ruler, and a line 2.5 mm high."""


def test_a_text_is_as_high_as_its_lines() -> None:
    """The block has the width of its space and the height of its lines."""
    block = set_text(RULER, "two words here", STYLE, Spot(3, 4, 10), "caption")
    assert block.lines == ("two words", "here")
    assert (block.rect.x_mm, block.rect.y_mm, block.rect.width_mm) == (3, 4, 10)
    assert block.rect.height_mm == pytest.approx(5.0)
    assert (block.purpose, block.whole, block.is_shortened) == ("caption", "two words here", False)


@pytest.mark.parametrize(
    ("width_mm", "max_lines", "lines"),
    [
        (10, 1, ("two words…",)),
        (9, 2, ("two words", "here")),
        (5, 2, ("two", "words…")),
        (6, 2, ("two", "words…")),
        (14, 1, ("two words here",)),
        (4, 1, ("two…",)),
    ],
)
def test_shortening_keeps_the_lines_before(
    width_mm: float, max_lines: int, lines: tuple[str, ...]
) -> None:
    """Only the last line is cut, with room for the ellipsis, and only when it must be."""
    block = set_text(RULER, "two words here", STYLE, Spot(0, 0, width_mm, max_lines), "caption")
    assert len(block.lines) <= max_lines
    assert all(RULER.width_mm(line, STYLE) <= width_mm + 1e-9 for line in block.lines)
    assert block.is_shortened is lines[-1].endswith(ELLIPSIS)
    if width_mm != 5:
        assert block.lines == lines


def test_no_sign_stands_before_the_ellipsis() -> None:
    """A comma before the dots would read as a slip."""
    block = set_text(RULER, "brass, cast", STYLE, Spot(0, 0, 8, 1), "caption")
    assert block.lines == ("brass…",)


@pytest.mark.parametrize(
    ("number", "width_mm", "lines"),
    [
        ("1987.412.9", 20, ("1987.412.9",)),
        ("1987.412.9", 9, ("1987.412.", "9")),
        ("1987.412.9", 5, ("1987.", "412.9")),
        ("PMM/12-7 a", 4, ("PMM/", "12-7", "a")),
        ("ABCDEFGH", 3, ("ABC", "DEF", "GH")),
        ("..12", 3, ("..", "12")),
        ("12.", 9, ("12.",)),
        ("", 9, ("",)),
    ],
)
def test_numbers_break_only_after_their_own_signs(
    number: str, width_mm: float, lines: tuple[str, ...]
) -> None:
    """A number is never shortened; only a piece wider than the line is broken inside."""
    assert break_number(RULER, number, STYLE, width_mm=width_mm) == lines
    block = set_number(RULER, number, STYLE, Spot(0, 0, width_mm), "object-number")
    assert "".join(block.lines).replace(" ", "") == number.replace(" ", "")
    assert block.rect.height_mm == pytest.approx(2.5 * len(lines))


def test_the_widest_piece() -> None:
    """No number breaks below its longest piece; no numbers need no room."""
    assert longest_piece_mm(RULER, ["1987.412.9", "L 12"], STYLE) == pytest.approx(5.0)
    assert longest_piece_mm(RULER, [], STYLE) == 0.0


def test_a_text_knows_its_language() -> None:
    """Letters that are drawn differently say which face they want."""
    assert set_text(RULER, "漆塗りの箱", STYLE, Spot(0, 0, 40), "caption").language == "ja"
