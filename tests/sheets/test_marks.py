from __future__ import annotations

import pytest

from service.geometry import Rect
from service.sheets.marks import CutMark, cut_marks

PRINTABLE = Rect(5, 5, 200, 287)


def drawn(marks: tuple[CutMark, ...]) -> list[tuple[float, float, float, float]]:
    """Write marks as x and y of both ends."""
    return [(m.start.x_mm, m.start.y_mm, m.end.x_mm, m.end.y_mm) for m in marks]


def test_a_single_card_has_two_marks_a_corner() -> None:
    """Each is 3 mm long, 1 mm away from the corner and prolongs an edge."""
    marks = drawn(cut_marks([Rect(50, 60, 100, 80)], printable=PRINTABLE))
    assert marks == [
        (50, 56, 50, 59),
        (150, 56, 150, 59),
        (46, 60, 49, 60),
        (151, 60, 154, 60),
        (46, 140, 49, 140),
        (151, 140, 154, 140),
        (50, 141, 50, 144),
        (150, 141, 150, 144),
    ]


def test_cards_that_touch_are_marked_in_the_margin() -> None:
    """Two cards side by side share the marks of their common edge and have none between them."""
    cards = [Rect(50, 60, 40, 80), Rect(90, 60, 40, 80)]
    marks = drawn(cut_marks(cards, printable=PRINTABLE))
    assert [mark for mark in marks if mark[0] == mark[2] == 90] == [
        (90, 56, 90, 59),
        (90, 141, 90, 144),
    ]
    assert len(marks) == 6 + 4


def test_cards_that_touch_but_for_rounding_share_marks() -> None:
    """A sum of decimals that misses the edge by a hair still gives one mark."""
    cards = [Rect(50.1, 60, 40.2, 80), Rect(90.3, 60, 40, 80)]
    assert 50.1 + 40.2 != 90.3
    assert len(cut_marks(cards, printable=PRINTABLE)) == 10


def test_no_mark_runs_into_a_neighbour() -> None:
    """Where the gap is narrower than a mark, the outer ends of the line mark it."""
    cards = [Rect(50, 60, 40, 80), Rect(93, 60, 40, 80)]
    marks = drawn(cut_marks(cards, printable=PRINTABLE))
    assert [mark for mark in marks if mark[1] == mark[3] == 60] == [
        (46, 60, 49, 60),
        (134, 60, 137, 60),
    ]


def test_a_wide_gap_holds_marks() -> None:
    """Cards ten millimetres apart have marks between them."""
    cards = [Rect(50, 60, 40, 80), Rect(100, 60, 40, 80)]
    assert len(cut_marks(cards, printable=PRINTABLE)) == 16


def test_cards_as_wide_as_the_page_are_marked_on_the_cut() -> None:
    """Without a margin the mark lies on the common edge, where the printer just reaches."""
    cards = [Rect(0, 0, 210, 148.5), Rect(0, 148.5, 210, 148.5)]
    assert drawn(cut_marks(cards, printable=PRINTABLE)) == [
        (5, 148.5, 8, 148.5),
        (202, 148.5, 205, 148.5),
    ]


def test_a_slip_too_narrow_for_a_mark_gets_none_on_its_edge() -> None:
    """A mark on the edge never runs past the card's corner into the next one."""
    cards = [Rect(4, 50, 2, 80), Rect(7, 40, 90, 100)]
    marks = drawn(cut_marks(cards, printable=PRINTABLE))
    assert [mark for mark in marks if mark[1] == mark[3] == 50] == []


@pytest.mark.parametrize("card", [Rect(0, 0, 210, 297), Rect(1, 1, 208, 295)])
def test_a_whole_sheet_needs_no_cut(card: Rect) -> None:
    """Edges beyond the printer's reach get no mark."""
    assert cut_marks([card], printable=PRINTABLE) == ()


def test_marks_are_lines() -> None:
    """A mark's bounds have a length and no thickness."""
    (first, *_) = cut_marks([Rect(50, 60, 100, 80)], printable=PRINTABLE)
    assert first.bounds == Rect(50, 56, 0, 3)
