from __future__ import annotations

import pytest

from service.errors import FaceTooLargeError, NoFreePositionError, StartPositionError
from service.geometry import Rect, Size
from service.sheets.impose import Face, Sheet, impose_pages
from service.sheets.stocks import A5, A6, STOCKS, find_stock

LABELS = find_stock("A4 3x7 63.5x38.1", STOCKS)
QUARTERS = find_stock("A4 card 4xA6", STOCKS)


def faces(count: int, size: Size = LABELS.label) -> list[Face]:
    """Make faces with the keys p1, p2 and so on."""
    return [Face(f"p{n}", size) for n in range(1, count + 1)]


def laid(sheets: tuple[Sheet, ...]) -> list[list[tuple[str, int]]]:
    """Say for each sheet which face lies at which position."""
    return [[(place.key, place.position) for place in sheet.placements] for sheet in sheets]


def test_nothing_makes_no_sheet() -> None:
    """Without pages no sheet is fed."""
    assert impose_pages([], LABELS) == ()


def test_goes_on_to_the_next_sheet() -> None:
    """Five A6 cards take one whole sheet and a place on the next."""
    sheets = impose_pages(faces(5, A6), QUARTERS)
    assert laid(sheets) == [[("p1", 1), ("p2", 2), ("p3", 3), ("p4", 4)], [("p5", 1)]]
    assert [sheet.number for sheet in sheets] == [1, 2]


def test_a_part_used_sheet_comes_first() -> None:
    """Start position and spoiled positions hold for the first sheet and no other."""
    sheets = impose_pages(faces(5, A6), QUARTERS, start_position=2, skipped={3})
    assert laid(sheets) == [[("p1", 2), ("p2", 4)], [("p3", 1), ("p4", 2), ("p5", 3)]]


def test_copies_lie_side_by_side() -> None:
    """Both labels of one box come off the sheet together."""
    sheets = impose_pages(faces(2), LABELS, copies=2)
    assert laid(sheets) == [[("p1", 1), ("p1", 2), ("p2", 3), ("p2", 4)]]


def test_centres_a_smaller_page() -> None:
    """A page smaller than its label has equal margins on both sides."""
    (sheet,) = impose_pages([Face("small", Size(53.5, 28.1))], LABELS)
    rect = sheet.placements[0].rect
    assert (rect.x_mm, rect.y_mm) == pytest.approx((12.21, 20.15))
    assert rect.size == Size(53.5, 28.1)


def test_turns_a_page_that_fits_no_other_way() -> None:
    """An upright page on a level label is turned a quarter, and its rectangle with it."""
    (sheet,) = impose_pages([Face("tall", Size(38, 60))], LABELS)
    place = sheet.placements[0]
    assert (place.turned_deg, place.rect.size) == (90, Size(60, 38))


def test_refuses_a_page_larger_than_its_place() -> None:
    """The error names the page, its size and the stock."""
    with pytest.raises(FaceTooLargeError, match=r"lid is 148\.0 x 210\.0 mm"):
        impose_pages([Face("lid", A5)], LABELS)


@pytest.mark.parametrize(("start_position", "skipped"), [(0, set()), (22, set()), (1, {0, 22})])
def test_refuses_positions_off_the_sheet(start_position: int, skipped: set[int]) -> None:
    """Neither the first nor a spoiled position can be one the sheet does not have."""
    with pytest.raises(StartPositionError):
        impose_pages(faces(1), LABELS, start_position=start_position, skipped=skipped)


def test_refuses_a_used_up_first_sheet() -> None:
    """A first sheet without a free place is an error: what is printed there would be lost."""
    with pytest.raises(NoFreePositionError, match="from 20 to 21"):
        impose_pages(faces(1), LABELS, start_position=20, skipped={20, 21})


@pytest.mark.parametrize("copies", [0, -1])
def test_copies_are_counted_from_one(copies: int) -> None:
    """No copies at all is a slip of the programmer."""
    with pytest.raises(ValueError, match="copies"):
        impose_pages(faces(1), LABELS, copies=copies)


def test_labels_get_no_cut_marks() -> None:
    """Die-cut labels come apart by themselves."""
    (sheet,) = impose_pages(faces(21), LABELS)
    assert sheet.marks == ()


def test_cards_get_cut_marks() -> None:
    """A card smaller than its sheet gets two marks at each corner."""
    (sheet,) = impose_pages([Face("lid", A5)], find_stock("A4 card", STOCKS))
    assert sheet.placements[0].rect == Rect(31, 43.5, 148, 210)
    assert len(sheet.marks) == 8
