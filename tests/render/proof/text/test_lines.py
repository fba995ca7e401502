from __future__ import annotations

from dataclasses import replace

import pytest

from service.geometry import Rect
from service.render.proof.text.lines import Bands, InkedLine, inked_lines, lines_of
from service.render.reading.content import Run
from service.render.reading.fonts import shipped_fonts
from service.render.reading.glyphs import RunReader, SetRun
from service.render.reading.shaping import Shaper
from tests.render.made import FONTS, text

EMPTY = SetRun((), (), (), None, None, "")


def inked(x_mm: float, y_mm: float) -> InkedLine:
    """Give a line of glyphs that begins somewhere."""
    return InkedLine(x_mm, y_mm, b"", EMPTY, None)


def test_lines_stand_below_each_other() -> None:
    """Each line has a band one line pitch high; empty ones are left out."""
    block = replace(text("a"), lines=("a", "", "b"))
    tops_mm = [line.rect.y_mm for line in lines_of([block])]
    assert tops_mm == pytest.approx([5.0, 5.0 + 2 * block.style.leading_mm])


def test_ink_may_overhang_a_little() -> None:
    """A letter may lean out by 0.3 mm sideways and two fifths of an em up and down."""
    (line,) = lines_of([text("a", width_mm=20.0)])
    up_mm = 0.4 * line.em_mm
    height_mm = line.rect.height_mm + 2 * up_mm
    widest = Rect(4.7, 5.0 - up_mm, 20.6, height_mm)
    assert line.holds(replace(widest, width_mm=20.599, height_mm=height_mm - 0.001))
    assert not line.holds(replace(widest, x_mm=4.69))
    assert not line.holds(replace(widest, width_mm=20.7))
    assert not line.holds(replace(widest, y_mm=widest.y_mm - 0.01))
    assert not line.holds(replace(widest, height_mm=height_mm + 0.1))


def test_lines_are_found_by_their_band() -> None:
    """What begins in a band is given in the order of drawing; its lower edge is the next one's."""
    bands = Bands([inked(9.0, 12.0), inked(5.0, 10.0), inked(5.0, 15.0), inked(40.0, 11.0)])
    assert bands.within(Rect(5.0, 10.0, 20.0, 5.0)) == [0, 1]
    assert bands.within(Rect(5.0, 15.0, 20.0, 5.0)) == [2]
    assert bands.within(Rect(5.0, 20.0, 20.0, 5.0)) == []


def test_lines_of_glyphs_stand_on_the_face() -> None:
    """Points from the bottom become mm from the top, and ink moves along."""
    shipped = shipped_fonts(FONTS)
    reader = RunReader(tuple(shipped), Shaper(shipped))
    (line,) = inked_lines([Run(72.0, 36.0, b"/F0 72 Tf <000c> Tj")], reader, height_mm=50.8)
    assert (line.x_mm, line.y_mm) == pytest.approx((25.4, 38.1))
    assert line.ink is not None
    assert line.ink.bottom_mm == pytest.approx(38.1)
    assert line.spelled({("Atkinson-Hyperlegible-Next", 12): "B"}) == "B"
    assert line.spelled({}) == "\ufffd"
