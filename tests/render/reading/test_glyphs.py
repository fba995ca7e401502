from __future__ import annotations

import pytest

from service.render.reading.fonts import shipped_fonts
from service.render.reading.glyphs import Glyph, RunReader, SetRun
from service.render.reading.shaping import Shaper
from service.units import mm_from_points, points_from_mm
from tests.render.made import FONTS

SHIPPED = shipped_fonts(FONTS)
LATIN = "Atkinson-Hyperlegible-Next"
# Advance widths of the regular face, from its table of horizontal metrics: 613 and 280.
CAPITAL, BLANK = 0x0C, 0xE7


def read(operators: bytes) -> SetRun:
    """Read a line set in the shipped fonts."""
    return RunReader(tuple(SHIPPED), Shaper(SHIPPED)).read(operators)


def in_points(glyph: Glyph) -> tuple[int, float, float, float]:
    """Give a glyph's number, where it stands to the right and up, and its size, in points."""
    x_pt, y_pt = points_from_mm(glyph.origin.x_mm), points_from_mm(-glyph.origin.y_mm)
    return (glyph.number, round(x_pt, 3), round(y_pt, 3), round(points_from_mm(glyph.size_mm), 3))


@pytest.mark.parametrize(
    ("operators", "expected"),
    [
        pytest.param(
            b"/F0 10 Tf [<000c000c>] TJ", [(12, 0, 0, 10), (12, 6.13, 0, 10)], id="widths"
        ),
        pytest.param(
            b"/F0 10 Tf [<000c>100<000c>-50] TJ <000c> Tj",
            [(12, 0, 0, 10), (12, 5.13, 0, 10), (12, 11.76, 0, 10)],
            id="shifts in thousandths move the pen back",
        ),
        pytest.param(
            b"/F0 10 Tf 3 Ts <000c> Tj 0 Ts [<000c>]TJ",
            [(12, 0, 3, 10), (12, 6.13, 0, 10)],
            id="rise lifts",
        ),
        pytest.param(
            b"/F0 10 Tf <000c> Tj /F0 20 Tf <000c> Tj",
            [(12, 0, 0, 10), (12, 6.13, 0, 20)],
            id="sizes change",
        ),
    ],
)
def test_text_operators(operators: bytes, expected: list[tuple[int, float, float, float]]) -> None:
    """Places follow the text operators of ISO 32000-1, 9.3 and 9.4."""
    run = read(operators)
    assert [in_points(glyph) for glyph in run.glyphs] == expected
    assert run.unread == ""


def test_ink_is_that_of_the_outlines() -> None:
    """An H of 10 pt stands 6.68 pt high on the baseline; a blank shows nothing."""
    run = read(b"/F0 10 Tf [<00e7000c00e7>] TJ")
    assert run.ink is not None
    assert points_from_mm(run.ink.height_mm) == pytest.approx(6.68, abs=0.01)
    assert run.ink.bottom_mm == pytest.approx(0.0, abs=0.01)
    assert len(run.lefts_mm) == len(run.rights_mm) == 1
    assert run.lefts_mm[0] == run.ink.x_mm > mm_from_points(2.8)


def test_a_blank_line_has_no_ink() -> None:
    """Blanks alone leave nothing to look for."""
    assert read(b"/F0 10 Tf [<00e700e7>] TJ").ink is None


def test_what_a_reader_is_told() -> None:
    """A text that stands for the glyphs is read back; without one there is none."""
    told = read(b"/Span <</ActualText<FEFF0645D83DDE00>>> BDC /F9 10 Tf [<0004>] TJ EMC")
    assert told.said == "م\U0001f600"
    assert told.pieces[0].font == "Noto-Sans-Arabic-Bold" or told.pieces[0].font in SHIPPED
    assert read(b"/F0 10 Tf [<000c>] TJ").said is None


@pytest.mark.parametrize(
    "unknown",
    [
        pytest.param(b"/F99 10 Tf [<0004>] TJ", id="no such font"),
        pytest.param(b"[<0004>] TJ", id="no font at all"),
        pytest.param(b"3 Tr", id="a way to hide text"),
        pytest.param(b"1 0 0 1 5 5 Tm", id="a matrix"),
        pytest.param(b"(abc) Tj", id="letters"),
    ],
)
def test_the_rest_is_told(unknown: bytes) -> None:
    """Reading stops where something is not known, and says what it is."""
    assert read(unknown + b" /F0 10 Tf <000c> Tj").unread.startswith(unknown.decode()[:6])


def test_half_a_code_is_damage() -> None:
    """Codes have two bytes; a string that ends within one is none."""
    with pytest.raises(ValueError, match=r"odd|non-hexadecimal|hex"):
        read(b"/F0 10 Tf [<000c0>] TJ")
