from __future__ import annotations

import pytest

from service.errors import UnknownPrinterError
from service.geometry import Insets, Rect
from service.sheets.correction import NO_CORRECTION, Correction
from service.sheets.printers.printer import (
    ANY_PRINTER,
    Printer,
    PrinterSetup,
    TrayCorrection,
    find_setup,
    plain,
)
from service.sheets.stocks import STOCKS, find_stock

LABELS = find_stock("A4 3x7 63.5x38.1", STOCKS)
CARD = find_stock("A4 card", STOCKS)


def measured(tray: str, stock: str, shift_mm: float) -> TrayCorrection:
    """Make a correction that is known by its shift to the left."""
    return TrayCorrection(tray, stock, Correction(shift_x_mm=-shift_mm), 0.1)


WHOLE = measured("", "", 1)
TRAY = measured("2", "", 2)
STOCK = measured("", LABELS.name, 3)
BOTH = measured("2", LABELS.name, 4)
COPIER = Printer("Office copier", Insets(4, 5, 12, 6), (WHOLE, TRAY, STOCK, BOTH))


@pytest.mark.parametrize(
    ("known", "tray", "expected"),
    [
        ((WHOLE, TRAY, STOCK, BOTH), "2", BOTH),
        ((WHOLE, TRAY, STOCK), "2", TRAY),
        ((WHOLE, STOCK), "2", STOCK),
        ((WHOLE,), "2", WHOLE),
        ((WHOLE, TRAY, STOCK, BOTH), "", STOCK),
        ((WHOLE, TRAY, BOTH), "", WHOLE),
    ],
    ids=["both", "tray", "stock", "printer", "stock, no tray", "printer, no tray"],
)
def test_the_nearest_measure_is_used(
    known: tuple[TrayCorrection, ...], tray: str, expected: TrayCorrection
) -> None:
    """Tray and stock come first, then the tray, the stock, the printer."""
    printer = Printer("Copier", None, known)
    assert printer.correction_for(tray, LABELS.name) == expected.correction


def test_nothing_measured_corrects_nothing() -> None:
    """A printer whose other tray alone was measured prints as it is."""
    assert Printer("Copier", None, (TRAY,)).correction_for("3", "") == NO_CORRECTION
    assert ANY_PRINTER.correction_for(LABELS) == NO_CORRECTION


def test_measuring_again_replaces() -> None:
    """One tray and stock has one correction; the others stay, in order of their names."""
    again = measured("2", "", 7)
    printer = Printer("Copier", None, (BOTH, TRAY)).measured(again).measured(WHOLE)
    assert printer.corrections == (WHOLE, again, BOTH)
    assert printer.forgot(tray=" 2", stock="").corrections == (WHOLE, BOTH)
    assert printer.forgot(tray="2", stock="a4 3X7 63.5x38.1").corrections == (WHOLE, again)


def test_edges_of_the_printer_win() -> None:
    """What the printer leaves white is known better than what is usual for the stock."""
    assert PrinterSetup(COPIER).edges_for(LABELS) == Insets(4, 5, 12, 6)
    assert ANY_PRINTER.edges_for(LABELS) == LABELS.edges


def test_reach_of_a_shifted_printer() -> None:
    """A print 2 mm too far right begins 2 mm later on paper, and ends no later than before."""
    setup = PrinterSetup(Printer("Copier", Insets(4, 5, 12, 6), (TRAY,)), "2")
    reach = setup.reach_on(CARD)
    assert (reach.x_mm, reach.y_mm) == pytest.approx((8, 4))
    assert (reach.right_mm, reach.bottom_mm) == pytest.approx((205, 285))


def test_reach_without_a_correction_is_what_is_printable() -> None:
    """Nothing is lost to rounding where nothing is corrected."""
    assert ANY_PRINTER.reach_on(CARD) == CARD.printable_rect()
    assert PrinterSetup(Printer("x", Insets(1, 2, 3, 4))).reach_on(CARD) == Rect(4, 1, 204, 293)


def test_finds_a_printer_as_typed() -> None:
    """Capitals and blanks do not matter in the names of printers and trays."""
    assert find_setup([COPIER], " office  COPIER ", "2") == PrinterSetup(COPIER, "2")
    assert find_setup([COPIER], "Office copier").tray == ""
    assert plain(" Tray  A ") == "tray a"


@pytest.mark.parametrize(
    ("name", "tray", "what"), [("Laser", "", "printer"), ("Office copier", "3", "tray")]
)
def test_refuses_what_was_never_measured(name: str, tray: str, what: str) -> None:
    """A slip in a name must not print without its correction."""
    with pytest.raises(UnknownPrinterError) as trouble:
        find_setup([COPIER], name, tray)
    assert trouble.value.what == what
    assert trouble.value.known == (("Office copier",) if what == "printer" else ("2",))
