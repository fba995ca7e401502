from __future__ import annotations

import pytest
import uharfbuzz

from service.render.reading.measures import Advances, Boxes
from tests.render.made import FONTS

CAPITAL, BLANK = 0x0C, 0xE7


@pytest.fixture(scope="module")
def font() -> uharfbuzz.Font:
    """Open the regular face."""
    path = FONTS / "AtkinsonHyperlegibleNext-Regular.ttf"
    return uharfbuzz.Font(uharfbuzz.Face(uharfbuzz.Blob.from_file_path(str(path))))


def test_widths_are_those_of_the_font_file(font: uharfbuzz.Font) -> None:
    """The B is 613 thousandths of the em wide and the blank 280, as its table `hmtx` says."""
    advances = Advances(font)
    assert advances[CAPITAL] == pytest.approx(0.613)
    assert advances[BLANK] == pytest.approx(0.280)
    assert dict(advances).keys() == {CAPITAL, BLANK}


def test_ink_is_that_of_the_outlines(font: uharfbuzz.Font) -> None:
    """Capitals are 0.668 em high, `cap_height_ratio` of `fonts.toml`; a blank shows nothing."""
    boxes = Boxes(font)
    left, bottom, right, top = boxes[CAPITAL]
    assert (bottom, top) == pytest.approx((0.0, 0.668), abs=0.001)
    assert 0 < left < right < 0.613
    assert boxes[BLANK] == boxes[60000] == (0.0, 0.0, 0.0, 0.0)
