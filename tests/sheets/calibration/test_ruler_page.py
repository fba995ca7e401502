from __future__ import annotations

import pytest

from service.geometry import Rect, Size
from service.pages.page import ShapeBlock, TextBlock
from service.sheets.calibration.ruler_page import ruler_page
from service.sheets.calibration.ruler_sheet import cross_lines, crosses_on
from service.sheets.stocks import A4, PAGES
from tests.pages.fake_ruler import FakeRuler


@pytest.mark.parametrize("page", PAGES.values(), ids=PAGES)
def test_words_stay_clear_of_the_crosses(page: Size) -> None:
    """No text touches a line of a cross, leaves the paper or covers another text."""
    made = ruler_page(page, FakeRuler())
    crosses = [line for cross in crosses_on(page) for line in cross_lines(cross)]
    texts = [block for block in made.blocks if isinstance(block, TextBlock)]
    paper = Rect(4.5, 4.5, page.width_mm - 9, page.height_mm - 9)
    for number, text in enumerate(texts):
        assert paper.holds(text.rect), text.whole
        assert not any(text.rect.overlaps(line) for line in crosses), text.whole
        assert not any(text.rect.overlaps(other.rect) for other in texts[number + 1 :])


@pytest.mark.parametrize("page", PAGES.values(), ids=PAGES)
def test_the_bar_stays_clear_of_everything(page: Size) -> None:
    """Bar and blanks touch no cross and run through no text."""
    made = ruler_page(page, FakeRuler())
    crosses = [line for cross in crosses_on(page) for line in cross_lines(cross)]
    others = {block.rect for block in made.blocks if isinstance(block, ShapeBlock)} - {*crosses}
    texts = [block.rect for block in made.blocks if isinstance(block, TextBlock)]
    assert len(others) == 3 + len(crosses_on(page)) + 2
    for line in others:
        assert not any(line.overlaps(other) for other in (*crosses, *texts))


def test_the_sheet_says_how_to_measure() -> None:
    """The words name both edges, the exactness, the size of print and the length of the bar."""
    made = ruler_page(A4, FakeRuler())
    words = " ".join(block.whole for block in made.blocks if isinstance(block, TextBlock))
    for said in (
        "from the LEFT edge of the paper to the middle of the cross",
        "from the TOP edge of the paper to the middle of the cross",
        "a quarter of a millimetre",
        "100 %",
        "100 mm",
        "Printer",
        "Tray",
        "Date",
    ):
        assert said in words


def test_every_line_of_the_crosses_is_there() -> None:
    """The page draws the geometry as it is, in black."""
    made = ruler_page(A4, FakeRuler())
    drawn = {block.rect for block in made.blocks if isinstance(block, ShapeBlock)}
    assert {line for cross in crosses_on(A4) for line in cross_lines(cross)} <= drawn
