from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from service.errors import CalibrationError, StockError, UnknownPrinterError
from service.geometry import Insets
from service.keeping.paper.measured import (
    Measures,
    enter_measures,
    find_paper,
    forget_printer,
    keep_address,
    place_of,
)
from service.keeping.printing.printers_file import load_saved
from service.sheets.stocks import A6

TODAY = date(2026, 11, 25)
# Two millimetres to the right and one too low, as far as a ruler shows.
CROSSES = ("A=17/16", "B=197/16", "C=17/283", "D=197/283")
ADDRESS = "ipp://printer.example/ipp/print"


def test_measures_become_a_correction(tmp_path: Path) -> None:
    """It is the way back from where ink landed, kept for the tray with its day."""
    entered = enter_measures(tmp_path, Measures("Office  copier", CROSSES, " 2 "), TODAY)
    assert entered.calibration is not None
    (kept,) = entered.printer.corrections
    assert (entered.printer.name, place_of(kept)) == ("Office copier", "tray 2, every stock")
    assert kept.correction.shift_x_mm == pytest.approx(-2, abs=1e-9)
    assert kept.measured_on == TODAY
    edges = Measures("office copier", edges=Insets(4, 4, 12, 4))
    entered = enter_measures(tmp_path, edges, TODAY)
    assert entered.calibration is None
    assert load_saved(tmp_path).printers == (entered.printer,)
    assert len(entered.printer.corrections) == 1


def test_a_cross_that_contradicts_the_others_is_named(tmp_path: Path) -> None:
    """Nothing is kept of it; and nothing typed is nothing measured."""
    wrong = ("A=17/16", "B=197/16", "C=17/283", "D=187/283", "E=107/16", "F=17/150", "G=197/150")
    with pytest.raises(CalibrationError, match="cross D: across"):
        enter_measures(tmp_path, Measures("X", wrong), TODAY)
    for nothing in (Measures("X"), Measures(" ", CROSSES)):
        with pytest.raises(CalibrationError):
            enter_measures(tmp_path, nothing, TODAY)
    assert load_saved(tmp_path).printers == ()


def test_an_address_is_kept_beside_what_was_measured(tmp_path: Path) -> None:
    """Of a printer that was measured, or of a new one; what is no address is refused."""
    enter_measures(tmp_path, Measures("Copier", CROSSES), TODAY)
    printer = keep_address(tmp_path, "copier", f" {ADDRESS} ")
    assert (printer.address, len(printer.corrections)) == (ADDRESS, 1)
    assert keep_address(tmp_path, "New one", "").address == ""
    assert [one.name for one in load_saved(tmp_path).printers] == ["Copier", "New one"]
    for name, address in (("Copier", "https://printer.example"), (" ", ADDRESS)):
        with pytest.raises(CalibrationError):
            keep_address(tmp_path, name, address)


def test_a_printer_is_forgotten_whole_or_in_part(tmp_path: Path) -> None:
    """A tray that was never measured, and an unknown name, are told."""
    enter_measures(tmp_path, Measures("Copier", CROSSES, "2"), TODAY)
    with pytest.raises(UnknownPrinterError):
        forget_printer(tmp_path, "Copier", tray="3")
    assert forget_printer(tmp_path, "copier", tray="2").corrections != ()
    assert load_saved(tmp_path).printers[0].corrections == ()
    forget_printer(tmp_path, "copier")
    with pytest.raises(UnknownPrinterError):
        forget_printer(tmp_path, "copier")


def test_papers_go_by_their_names() -> None:
    """Capitals do not matter; another paper is refused."""
    assert find_paper("a6") == A6
    with pytest.raises(StockError):
        find_paper("A7")
