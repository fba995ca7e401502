from __future__ import annotations

from pathlib import Path

import pytest
from fontTools.ttLib import TTFont

from service.pages.page import Direction, TextStyle
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from service.render.typeset.setter import Typesetter
from service.units import mm_from_points

RULER = PangoRuler(FONTS_CONF)
STYLE = TextStyle(12.0)


def test_widths_are_those_of_the_shipped_font() -> None:
    """Figures are as wide as the advance their font states, whatever the size."""
    with TTFont(FONTS_CONF.parent / "AtkinsonHyperlegibleNext-Regular.ttf") as font:
        name = font.getBestCmap()[ord("E")]
        advance_ratio = font["hmtx"][name][0] / font["head"].unitsPerEm
    for size_pt in (7.0, 12.0, 40.0):
        width_mm = RULER.width_mm("EEEE", TextStyle(size_pt))
        assert width_mm == pytest.approx(4 * advance_ratio * mm_from_points(size_pt), abs=0.02)


@pytest.mark.parametrize("weight", [400, 600, 700, 800])
def test_figures_are_of_one_width(weight: int) -> None:
    """Numbers below each other line up, and heavier type is not narrower."""
    style = TextStyle(12.0, weight=weight)
    widths_mm = {round(RULER.width_mm(figure * 10, style), 3) for figure in "0123456789"}
    assert len(widths_mm) == 1
    assert RULER.width_mm("Brass buckle", style) >= RULER.width_mm("Brass buckle", STYLE)


def test_lines_are_no_wider_than_asked() -> None:
    """A text breaks at blanks; a word longer than the line breaks inside."""
    broken = RULER.break_text("Brass and glass", STYLE, width_mm=20.0)
    assert broken.lines == ("Brass and", "glass")
    assert broken.width_mm <= 20.0
    whole_mm = RULER.width_mm("Brass and glass", STYLE)
    assert RULER.break_text("Brass and glass", STYLE, width_mm=whole_mm + 0.1).lines == (
        "Brass and glass",
    )
    long = RULER.break_text("W" * 30, STYLE, width_mm=20.0)
    assert "".join(long.lines) == "W" * 30
    assert len(long.lines) > 1


@pytest.mark.parametrize(
    ("text", "direction"),
    [
        ("Brass", Direction.LEFT_TO_RIGHT),
        ("كأس زجاجي", Direction.RIGHT_TO_LEFT),
        ("כוס זכוכית", Direction.RIGHT_TO_LEFT),
        ("12.5 كأس", Direction.RIGHT_TO_LEFT),
        ("", Direction.LEFT_TO_RIGHT),
    ],
)
def test_the_direction_is_that_of_the_first_letter(text: str, direction: Direction) -> None:
    """Figures have no direction of their own (Unicode Standard Annex 9)."""
    assert RULER.break_text(text, STYLE, width_mm=50).direction is direction


def test_missing_characters_are_named_once() -> None:
    """What no shipped font holds is named, once and in order; scripts we ship are not."""
    assert RULER.missing_characters("Brass, 1905") == ()
    assert RULER.missing_characters("漆 כוס कप é ▼") == ()
    assert RULER.missing_characters("a\U00012000b\U00013000\U00012000") == (
        "\U00012000",
        "\U00013000",
    )


def test_the_same_question_is_measured_once() -> None:
    """A card asks for the same lines again and again, and gets the same answer."""
    first = RULER.break_text("Brass and glass", STYLE, width_mm=20.0)
    assert RULER.break_text("Brass and glass", TextStyle(12.0), width_mm=20.0) is first


def test_fonts_that_are_not_there_are_refused(tmp_path: Path) -> None:
    """Without its fonts the ruler would measure something else."""
    with pytest.raises(OSError, match="cannot be loaded"):
        PangoRuler(tmp_path / "fonts.conf")


def test_fonts_can_be_shared() -> None:
    """A ruler given a typesetter measures with it, and as any other does."""
    ruler = PangoRuler(FONTS_CONF, Typesetter(FONTS_CONF))
    assert ruler.width_mm("Brass", STYLE) == RULER.width_mm("Brass", STYLE)


@pytest.mark.parametrize("by_mm", [-0.2, 0.0, 0.2])
def test_a_text_that_just_fits_is_broken_as_it_is_set(by_mm: float) -> None:
    """Near its own width a text is broken by the shaper: it is one line only where it fits."""
    text = "Brass divider, wing nut"
    width_mm = RULER.width_mm(text, STYLE) + by_mm
    broken = RULER.break_text(text, STYLE, width_mm=width_mm)
    assert all(line_mm <= width_mm + 0.01 for line_mm in broken.widths_mm)
    assert len(broken.lines) == (1 if by_mm > 0 else 2)
