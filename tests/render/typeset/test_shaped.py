from __future__ import annotations

import pytest

from service.render.task import FONTS_CONF
from service.render.typeset.shaped import EMPTY_GLYPH, LineShaper


@pytest.fixture(scope="module")
def shaper() -> LineShaper:
    """Load the shipped fonts once."""
    return LineShaper(FONTS_CONF)


def shape(shaper: LineShaper, text: str, *, leftward: bool = False) -> None:
    """Shape a line at 16 CSS pixels."""
    shaper.shape_line(text.encode(), size_px=16, weight=400, language="", is_right_to_left=leftward)


def test_runs_hold_every_byte_and_the_whole_width(shaper: LineShaper) -> None:
    """Each change of font begins a run; together they are the line."""
    text = "Dial ⌀ 90 漆"
    shape(shaper, text)
    runs = list(shaper.runs())
    assert len(runs) > 2
    assert sum(run.length for run in runs) == len(text.encode())
    assert sum(sum(run.widths) for run in runs) == shaper.extents().width


@pytest.mark.parametrize("leftward", [False, True])
def test_the_base_direction_is_the_one_given(shaper: LineShaper, *, leftward: bool) -> None:
    """What stands first is on the right in a line from right to left (Unicode Annex 9)."""
    shape(shaper, "12 כוס ab", leftward=leftward)
    first = next(iter(shaper.runs()))
    assert (first.start > 0) is leftward
    shaper.set_paragraph(b"7", size_px=16, weight=400, language="", width_px=None)
    assert len(shaper.lines()) == 1


def test_a_line_reaches_above_and_below_its_baseline(shaper: LineShaper) -> None:
    """An empty line is as high as one of letters, and has no width and no runs."""
    shape(shaper, "Eg")
    full = shaper.extents()
    shape(shaper, "")
    empty = shaper.extents()
    assert (empty.ascent, empty.descent) == (full.ascent, full.descent)
    assert full.ascent > full.descent > 0
    assert empty.width == 0
    assert list(shaper.runs()) == []


def test_missing_characters_have_numbers_beyond_all_fonts(shaper: LineShaper) -> None:
    """Cuneiform is in no shipped font; a joiner shows nothing."""
    shape(shaper, "\U00012000")
    assert next(iter(shaper.runs())).numbers[0] > EMPTY_GLYPH
    shape(shaper, "a\u200db")
    assert EMPTY_GLYPH in next(iter(shaper.runs())).numbers
