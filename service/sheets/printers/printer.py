"""A printer: how each of its trays is off, and the strip it cannot print."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date

from service.errors import UnknownPrinterError
from service.geometry import Insets, Rect
from service.sheets.correction import NO_CORRECTION, Correction
from service.sheets.stock import Stock


@dataclass(frozen=True, slots=True)
class TrayCorrection:
    """A correction, measured for a tray and stock; "" stands for every tray or every stock.

    `residual_mm` is how far the worst cross was off from the fit. `measured_on` is None where
    nobody noted the day.
    """

    tray: str
    stock: str
    correction: Correction
    residual_mm: float
    measured_on: date | None = None


@dataclass(frozen=True, slots=True)
class Printer:
    """A printer by the name people call it.

    `edges` is the strip it leaves white on each side, as measured on the day `edges_measured_on`;
    None where nobody measured it, or noted the day. `address` is where jobs can be sent, such as
    `ipp://192.0.2.7:631/ipp/print`; empty where people print the PDF themselves.
    """

    name: str
    edges: Insets | None = None
    corrections: tuple[TrayCorrection, ...] = ()
    edges_measured_on: date | None = None
    address: str = ""

    def measured(self, new: TrayCorrection) -> Printer:
        """Give the printer with a correction in place of the one for the same tray and stock."""
        others = self.forgot(tray=new.tray, stock=new.stock).corrections
        ordered = sorted((*others, new), key=lambda each: (each.tray, each.stock))
        return replace(self, corrections=tuple(ordered))

    def forgot(self, *, tray: str, stock: str) -> Printer:
        """Give the printer without the correction for that tray and stock, however typed."""
        gone = (plain(tray), plain(stock))
        kept = (each for each in self.corrections if (plain(each.tray), plain(each.stock)) != gone)
        return replace(self, corrections=tuple(kept))

    def correction_for(self, tray: str, stock: str) -> Correction:
        """Give the nearest that was measured: tray and stock, the tray, the stock, the printer."""
        known = {(each.tray, each.stock): each.correction for each in self.corrections}
        wanted = ((tray, stock), (tray, ""), ("", stock), ("", ""))
        return next((known[each] for each in wanted if each in known), NO_CORRECTION)


@dataclass(frozen=True, slots=True)
class PrinterSetup:
    """The printer and tray of a print run."""

    printer: Printer
    tray: str = ""

    def correction_for(self, stock: Stock) -> Correction:
        """Give the correction for a stock in this tray."""
        return self.printer.correction_for(self.tray, stock.name)

    def edges_for(self, stock: Stock) -> Insets:
        """Give the strips left white: those of the printer, else what is usual for the stock."""
        return self.printer.edges or stock.edges

    def reach_on(self, stock: Stock) -> Rect:
        """Give the part of the paper where ink can be put, correction and all.

        What is sent must lie where the printer prints, and where it lands as well: a shifted print
        does not make the strip along the paper's edge any better.
        """
        printable = stock.printable_rect(self.edges_for(stock))
        landing = self.correction_for(stock).inverse().inside(printable)
        return _common(printable, landing)


ANY_PRINTER = PrinterSetup(Printer(""))
"""An office printer nobody measured."""


def find_setup(printers: Iterable[Printer], name: str, tray: str = "") -> PrinterSetup:
    """Give the printer of that name with one of its trays; capitals and blanks do not matter.

    Raises:
        UnknownPrinterError: When no printer is called so, or a tray is named that was never
            measured: a slip in typing must not print without its correction.
    """
    known = {plain(printer.name): printer for printer in printers}
    if plain(name) not in known:
        names = [printer.name for printer in known.values()]
        raise UnknownPrinterError(name, what="printer", known=names)
    printer = known[plain(name)]
    trays = {plain(each.tray): each.tray for each in printer.corrections if each.tray}
    if tray and plain(tray) not in trays:
        raise UnknownPrinterError(tray, what="tray", known=list(trays.values()))
    return PrinterSetup(printer, trays[plain(tray)] if tray else "")


def plain(name: str) -> str:
    """Give a name as it is compared: without capitals and doubled blanks."""
    return " ".join(name.split()).casefold()


def _common(one: Rect, other: Rect) -> Rect:
    left_mm, top_mm = max(one.x_mm, other.x_mm), max(one.y_mm, other.y_mm)
    right_mm, bottom_mm = min(one.right_mm, other.right_mm), min(one.bottom_mm, other.bottom_mm)
    return Rect(left_mm, top_mm, right_mm - left_mm, bottom_mm - top_mm)
