"""What was measured of a printer becomes its correction; what is known of it can be forgotten."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from service.errors import CalibrationError, StockError, UnknownPrinterError
from service.geometry import Insets, Size
from service.keeping.printing.printers_file import keep_saved, load_saved
from service.sentence import Sentence
from service.sheets.calibration.calibrate import Calibration, calibrate
from service.sheets.calibration.readings import read_measurements
from service.sheets.calibration.ruler_sheet import crosses_on
from service.sheets.printers.printer import Printer, TrayCorrection, plain
from service.sheets.printers.saved import Saved, checked_address
from service.sheets.stocks import PAGES


@dataclass(frozen=True, slots=True)
class Measures:
    """What somebody measured of a printer, on a ruler sheet of a paper, as typed.

    `crosses` are texts such as `A=15.25,14.75`; `edges` is what it cannot print. An empty tray
    stands for every tray, an empty stock for every stock.
    """

    printer: str
    crosses: Sequence[str] = ()
    tray: str = ""
    stock: str = ""
    paper: str = "A4"
    edges: Insets | None = None


@dataclass(frozen=True, slots=True)
class Entered:
    """The printer as it is kept now, what its crosses said, and the file it is kept in."""

    printer: Printer
    calibration: Calibration | None
    path: Path


def enter_measures(folder: Path, measures: Measures, today: date) -> Entered:
    """Work out a printer's correction and keep it.

    Raises:
        CalibrationError: When nothing was typed, or what was typed cannot be right.
        StockError: When the paper is unknown.
    """
    if not measures.printer.strip() or not (measures.crosses or measures.edges):
        raise CalibrationError(
            [Sentence("name the printer, and type measurements, --edges or both")]
        )
    saved = load_saved(folder)
    changed = find_printer(saved, measures.printer) or Printer(" ".join(measures.printer.split()))
    if measures.edges:
        changed = replace(changed, edges=measures.edges, edges_measured_on=today)
    found = None
    if measures.crosses:
        crosses = crosses_on(find_paper(measures.paper))
        found = calibrate(read_measurements(measures.crosses, crosses))
        tray, worst_mm = " ".join(measures.tray.split()), found.largest_residual_mm
        changed = changed.measured(
            TrayCorrection(tray, measures.stock, found.correction, worst_mm, today)
        )
    return Entered(changed, found, keep_saved(folder, saved.with_printer(changed)))


def keep_address(folder: Path, name: str, address: str) -> Printer:
    """Keep where prints are sent to a printer, which need not have been measured.

    Raises:
        CalibrationError: When the printer has no name, or the address is none.
    """
    try:
        checked = checked_address(address)
    except ValueError as error:
        raise CalibrationError([error.args[0]]) from error
    if not name.strip():
        raise CalibrationError([Sentence("a printer needs a name")])
    saved = load_saved(folder)
    known = find_printer(saved, name) or Printer(" ".join(name.split()))
    printer = replace(known, address=checked)
    keep_saved(folder, saved.with_printer(printer))
    return printer


def forget_printer(folder: Path, name: str, *, tray: str = "", stock: str = "") -> Printer:
    """Forget a printer, or one of its corrections, and give it as it was.

    Raises:
        UnknownPrinterError: When there is nothing of that name.
    """
    saved = load_saved(folder)
    printer = find_printer(saved, name)
    if printer is None:
        names = [each.name for each in saved.printers]
        raise UnknownPrinterError(name, what="printer", known=names)
    if not tray and not stock:
        keep_saved(folder, saved.without_printer(name))
        return printer
    kept = printer.forgot(tray=tray, stock=stock)
    if kept == printer:
        known = [place_of(each) for each in printer.corrections]
        wanted = ", ".join(filter(None, (tray, stock)))
        raise UnknownPrinterError(wanted, what="correction for", known=known)
    keep_saved(folder, saved.with_printer(kept))
    return printer


def find_printer(saved: Saved, name: str) -> Printer | None:
    """Find a printer by its name, however typed."""
    return next((each for each in saved.printers if plain(each.name) == plain(name)), None)


def find_paper(paper: str) -> Size:
    """Find the size of a paper that ruler sheets are made for.

    Raises:
        StockError: When there is none.
    """
    known = {name.casefold(): size for name, size in PAGES.items()}
    if paper.casefold() not in known:
        raise StockError(
            paper, measure="paper", reason=Sentence("is none of {pages}", pages=", ".join(PAGES))
        )
    return known[paper.casefold()]


def place_of(each: TrayCorrection) -> str:
    """Say for which tray and stock something was measured."""
    tray = f"tray {each.tray}" if each.tray else "every tray"
    return f"{tray}, {each.stock or 'every stock'}"
