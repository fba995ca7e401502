"""The path of the printers that were measured."""

from __future__ import annotations

from datetime import date

from fastapi import APIRouter
from pydantic import BaseModel, Field

from service.geometry import Insets
from service.keeping.printing.printers_file import load_saved
from service.sheets.calibration.limits import describe
from service.sheets.correction import Correction
from service.sheets.printers.printer import Printer, TrayCorrection
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter

router = APIRouter(route_class=GatedRoute)


class CorrectionView(BaseModel):
    """A correction for a tray and stock; an empty name stands for every tray or every stock.

    The point (x, y), in mm from the top left corner of the sheet, is sent to
    (xx x + xy y + shift_x_mm, yx x + yy y + shift_y_mm).
    """

    tray: str
    stock: str
    correction: Correction
    is_off: str = Field(description="How the printer is off, in words.")
    residual_mm: float = Field(description="How far the worst cross is off once corrected.")
    measured_on: date | None


class PrinterView(BaseModel):
    """A printer; `trays` are those that were measured, by the names to print with.

    `edges` is the strip it cannot print on each side, None where nobody measured it. `address` is
    where prints are sent to it, empty where they are not.
    """

    name: str
    trays: list[str]
    edges: Insets | None
    edges_measured_on: date | None
    corrections: list[CorrectionView]
    address: str


class PrintersView(BaseModel):
    """Every printer that was measured, in the order of names."""

    printers: list[PrinterView]


@router.get("/api/printers", dependencies=[needs(Role.VIEW)])
def printers(counter: TheCounter) -> PrintersView:
    """List the printers that were measured with the commands `calibrate`, and how each is off."""
    saved = load_saved(counter.data_folder)
    return PrintersView(printers=[_show(printer) for printer in saved.printers])


def _show(printer: Printer) -> PrinterView:
    trays = dict.fromkeys(each.tray for each in printer.corrections if each.tray)
    return PrinterView(
        name=printer.name,
        trays=list(trays),
        edges=printer.edges,
        edges_measured_on=printer.edges_measured_on,
        corrections=[_show_correction(each) for each in printer.corrections],
        address=printer.address,
    )


def _show_correction(each: TrayCorrection) -> CorrectionView:
    return CorrectionView(
        tray=each.tray,
        stock=each.stock,
        correction=each.correction,
        is_off=describe(each.correction.inverse()),
        residual_mm=each.residual_mm,
        measured_on=each.measured_on,
    )
