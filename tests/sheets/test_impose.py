from __future__ import annotations

import pytest

from service.errors import (
    FaceTooLargeError,
    NoFreePositionError,
    NoReachError,
    StartPositionError,
)
from service.geometry import Insets, Rect, Size
from service.sheets.correction import NO_CORRECTION, Correction
from service.sheets.impose import Face, Sheet, impose_pages
from service.sheets.printers.printer import Printer, PrinterSetup, TrayCorrection
from service.sheets.stocks import A5, A6, STOCKS, find_stock

LABELS = find_stock("A4 3x7 63.5x38.1", STOCKS)
QUARTERS = find_stock("A4 card 4xA6", STOCKS)
FULL_BLEED = find_stock("A4 2x4 105x74", STOCKS)
NARROW = Insets(4, 4, 4, 4)
INKJET = PrinterSetup(Printer("Inkjet", Insets(4, 4, 13, 4)))
SHIFTED = PrinterSetup(
    Printer("Copier", NARROW, (TrayCorrection("", "", Correction(shift_x_mm=-2.0), 0.0),))
)


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


def test_sheets_carry_what_is_known_of_the_printer() -> None:
    """Correction and edges stand on every sheet; an office printer has none and the usual."""
    for sheet in impose_pages(faces(30), LABELS, printer=SHIFTED):
        assert (sheet.correction, sheet.edges) == (Correction(shift_x_mm=-2.0), NARROW)
    (plain,) = impose_pages(faces(1), LABELS)
    assert (plain.correction, plain.edges) == (NO_CORRECTION, LABELS.edges)


def test_places_are_those_on_paper() -> None:
    """The correction is for whoever sends ink; pages stand where they shall be seen."""
    corrected = impose_pages(faces(30), LABELS, printer=SHIFTED)
    assert [sheet.placements for sheet in corrected] == [
        sheet.placements for sheet in impose_pages(faces(30), LABELS)
    ]


def test_positions_beyond_the_printers_reach_are_passed_over() -> None:
    """A printer that leaves 13 mm below white fills no label of the lowest row."""
    sheets = impose_pages(faces(8, FULL_BLEED.label), FULL_BLEED, printer=INKJET)
    positions = [[place.position for place in sheet.placements] for sheet in sheets]
    assert positions == [[1, 2, 3, 4, 5, 6], [1, 2]]
    assert [sheet.passed_over for sheet in sheets] == [(7, 8), ()]


def test_a_sheet_that_is_all_passed_over_is_no_sheet() -> None:
    """A part-used sheet with out-of-reach positions alone is left as it is."""
    (sheet,) = impose_pages(
        faces(2, FULL_BLEED.label), FULL_BLEED, start_position=7, printer=INKJET
    )
    assert (sheet.number, [place.position for place in sheet.placements]) == (1, [1, 2])
    assert sheet.passed_over == ()


def test_a_shift_takes_a_column_away() -> None:
    """Two millimetres to the right, labels at the left edge of the paper lose their margin."""
    (sheet,) = impose_pages(faces(4, FULL_BLEED.label), FULL_BLEED, printer=SHIFTED)
    assert [place.position for place in sheet.placements] == [2, 4, 6, 8]


@pytest.mark.parametrize("turned", [False, True], ids=["upright", "turned"])
def test_what_is_inked_counts_where_it_is_known(*, turned: bool) -> None:
    """A page whose ink keeps away from its edges goes where another could not."""
    size = FULL_BLEED.label.turned if turned else FULL_BLEED.label
    wide = Face("x", size, Rect(8, 14, size.width_mm - 22, size.height_mm - 28))
    (sheet,) = impose_pages([wide] * 8, FULL_BLEED, printer=INKJET)
    assert sheet.placements[-1].position == 8


def test_turned_ink_is_turned_with_its_page() -> None:
    """Turned clockwise, what reaches down on the page reaches to the left on the sheet."""
    size = FULL_BLEED.label.turned
    low = Face("x", size, Rect(20, 20, 30, size.height_mm - 20.5))
    (sheet,) = impose_pages([low] * 2, FULL_BLEED, printer=PrinterSetup(Printer("x", NARROW)))
    assert [place.position for place in sheet.placements] == [2, 4]


def test_a_page_nobody_can_print_is_refused() -> None:
    """Where ink runs to the edge of the label on every side of the sheet, nothing is imposed."""
    whole = Face("x", QUARTERS.label, Rect(0, 0, 105, 148))
    with pytest.raises(NoReachError, match="A4 card 4xA6"):
        impose_pages([whole], QUARTERS)


def test_marks_stay_within_the_corrected_reach() -> None:
    """Cut marks end where a shifted printer still prints."""
    cards = [Face("x", A6, Rect(7, 7, 91, 134))] * 4
    (sheet,) = impose_pages(cards, QUARTERS, printer=SHIFTED)
    reach = SHIFTED.reach_on(QUARTERS)
    assert reach.x_mm == 6
    assert all(reach.holds(mark.bounds) for mark in sheet.marks)
    assert min(mark.start.x_mm for mark in sheet.marks) == 6
