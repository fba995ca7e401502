from __future__ import annotations

from dataclasses import replace

import pytest

from service.geometry import Rect, Size
from service.pages.page import Page, Shade, ShapeBlock, TextBlock, TextStyle
from service.render.frames.measure.oracle import Difference, differences
from service.render.reading.fonts import shipped_fonts
from service.render.reading.shaping import Shaper
from service.render.task import FONTS_CONF
from service.render.worker import Workers
from tests.render.frames import made

pytestmark = [pytest.mark.print, pytest.mark.slow]
TEXT = TextBlock("title", Rect(10, 10, 60, 5), ("Brass 12",), TextStyle(10), "Brass 12")
SHAPE = ShapeBlock("panel", Rect(10, 20, 30, 20), Shade.GREY)
FACE = Size(100, 60)
PAGE = Page(made.KIND, "", "", 1, 1, FACE, (TEXT, SHAPE))


def html(*, text: str = "", shape: str = "", words: str = "Brass 12", more: str = "") -> str:
    """Give the body of a page of two blocks, with other styles for either."""
    return (
        f'<div style="left:10mm;top:10mm;font-size:10pt;line-height:5mm;{text}">{words}</div>'
        f'<div style="left:10mm;top:20mm;width:30mm;height:20mm;background:#888;{shape}"></div>'
        f"{more}"
    )


def found(workers: Workers, other: str, page: Page = PAGE) -> list[Difference]:
    """Compare the page as it should be with another."""
    theirs, ours = (made.drawn_body(workers, body, FACE) for body in (html(), other))
    shaper = Shaper(shipped_fonts(FONTS_CONF.parent))
    return list(differences(theirs, ours, [page], shaper))


SAME = {
    "itself": html(),
    "a-hair-off": html(text="left:10.005mm"),
    "blank-at-the-end": html(words="Brass 12 "),
    "a-tone-off": html(shape="background:#808080"),
    "other-order": html(text="z-index:2;position:absolute"),
}


@pytest.mark.parametrize("other", SAME.values(), ids=SAME)
def test_pages_that_look_alike_pass(other: str, workers: Workers) -> None:
    """What nobody could see in print makes no difference."""
    assert found(workers, other) == []


OTHERWISE = {
    "moved": (html(text="left:10.02mm"), TEXT, "elsewhere"),
    "lower": (html(text="top:10.02mm"), TEXT, "elsewhere"),
    "larger": (html(text="font-size:10.1pt"), TEXT, "elsewhere"),
    "bolder": (html(text="font-weight:700"), TEXT, "elsewhere"),
    "spaced": (html(text="letter-spacing:0.01mm"), TEXT, "elsewhere"),
    "other-words": (html(words="Brass 13"), TEXT, "elsewhere"),
    "more-words": (html(more='<div style="left:15mm;top:30mm">x</div>'), SHAPE, "elsewhere"),
    "colour": (html(text="color:#ccc"), TEXT, "dots"),
    "ground": (html(text="background:#888"), TEXT, "dots"),
    "underlined": (html(text="border-bottom:0.5mm solid #000"), TEXT, "dots"),
    "no-panel": (html(shape="background:none"), SHAPE, "dots"),
    "smaller-panel": (html(shape="height:19mm"), SHAPE, "dots"),
}


@pytest.mark.parametrize(("other", "block", "words"), OTHERWISE.values(), ids=OTHERWISE)
def test_pages_drawn_otherwise_are_told(
    other: str, block: TextBlock | ShapeBlock, words: str, workers: Workers
) -> None:
    """Each difference names the block at which it was seen."""
    seen = found(workers, other)
    assert any(one.block == block and words in one.words for one in seen)
    assert {one.page_number for one in seen} == {0}


def test_an_empty_page_is_compared_as_a_whole(workers: Workers) -> None:
    """Where there is no block, the fixed ink is looked at."""
    seen = found(workers, html(shape="background:none", words=""), replace(PAGE, blocks=()))
    assert any("dots" in one.words for one in seen)
    assert {one.block for one in seen} == {None}
