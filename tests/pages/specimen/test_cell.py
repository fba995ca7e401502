from __future__ import annotations

from dataclasses import replace

import pytest

from service.pages.page import MarkBlock, TextBlock
from service.pages.specimen.cell import set_cell
from service.symbols.pictograms import Family, Pictogram, Status
from tests.pages.fake_ruler import FakeRuler

SHARP = Pictogram(
    "sharp", "Sharp", "A point here pricks.", Family.WARNING, "ISO 3864-1", Status.DRAFT
)


def test_a_mark_is_drawn_in_three_sizes_on_one_line() -> None:
    """Twenty, twelve and eight millimetres, side by side, with the least size last."""
    blocks = set_cell(FakeRuler(), SHARP, width_mm=90.0)
    marks = [block for block in blocks if isinstance(block, MarkBlock)]
    assert [mark.rect.width_mm for mark in marks] == [20.0, 12.0, 8.0]
    assert [mark.rect.x_mm for mark in marks] == [0.0, 23.0, 38.0]
    assert {mark.rect.bottom_mm for mark in marks} == {20.0}
    assert {(mark.mark, mark.alt) for mark in marks} == {("sharp", "Sharp")}


@pytest.mark.parametrize(
    ("status", "words"), [(Status.DRAFT, "draft"), (Status.READ, "read by staff")]
)
def test_the_words_are_whole(status: Status, words: str) -> None:
    """Words, meaning and facts follow each other beside the mark, none shortened."""
    pictogram = replace(SHARP, meaning=SHARP.meaning * 8, status=status)
    cell = set_cell(FakeRuler(), pictogram, width_mm=90.0)
    texts = [block for block in cell if isinstance(block, TextBlock)]
    facts = f"after ISO 3864-1 · {words}"
    assert [text.whole for text in texts] == ["Sharp", SHARP.meaning * 8, facts]
    assert not any(text.is_shortened for text in texts)
    assert all(text.rect.x_mm >= 46.0 and text.rect.right_mm <= 90.0 for text in texts)
    assert [text.rect.y_mm for text in texts] == sorted(text.rect.y_mm for text in texts)


def test_a_form_of_our_own_is_called_so() -> None:
    """A mark that follows no published family says so."""
    own = replace(SHARP, geometry="own")
    texts = [b for b in set_cell(FakeRuler(), own, width_mm=90.0) if isinstance(b, TextBlock)]
    assert texts[-1].whole == "own form · draft"
