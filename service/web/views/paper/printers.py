"""The printers of the house: how each prints askew, where it is reached, and forgetting it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Annotated

from fastapi import APIRouter, Form, Request, Response

from service.errors import CalibrationError
from service.keeping.paper.measured import forget_printer, keep_address
from service.keeping.printing.printers_file import keep_saved, load_saved
from service.languages.saying import say
from service.sheets.calibration.limits import describe, explain_residual
from service.sheets.printers.printer import TrayCorrection
from service.sheets.printers.saved import Saved, read_saved, write_saved
from service.sheets.stocks import PAGES
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.views.language.telling import tell_fault
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.notice import Notice, Undo, go_to
from service.web.views.shell.page import show_page
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)

Name = Annotated[str, Form(max_length=200)]


@dataclass(frozen=True, slots=True)
class Line:
    """What was measured for a tray and stock, in words."""

    tray: str
    stock: str
    is_off: str
    residual_mm: float
    residual_words: str
    measured_on: date | None


@router.get("/printers", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def printers(request: Request, counter: TheCounter) -> Response:
    """Show every printer that is known."""
    return _show(request, load_saved(counter.data_folder), FilledForm())


@router.post("/printers/address", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def address(
    request: Request,
    acting: ThePageActing,
    name: Name = "",
    address: Annotated[str, Form(max_length=1000)] = "",
) -> Response:
    """Keep where a printer is reached; an empty address ends it."""
    folder = acting.counter.data_folder
    before = {one.name: one.address for one in load_saved(folder).printers}
    try:
        printer = keep_address(folder, name, address)
    except CalibrationError as error:
        field = "address" if name.strip() else "name"
        form = FilledForm({"name": name, "address": address}, {field: tell_fault(error.faults[0])})
        return _show(request, load_saved(folder), form)
    if printer.name in before:
        fields = {"name": printer.name, "address": before[printer.name]}
        undo = Undo("/printers/address", fields)
    else:
        undo = Undo("/printers/forget", {"name": printer.name})
    told = say("{name} is reached nowhere: its PDFs are printed by hand.", name=printer.name)
    if printer.address:
        told = say("{name} is reached at {at}.", name=printer.name, at=printer.address)
    return go_to("/printers", Notice(told, undo))


@router.post("/printers/forget", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def forget(acting: ThePageActing, name: Name, tray: Name = "", stock: Name = "") -> Response:
    """Forget a printer, or what was measured for one tray and stock."""
    gone = forget_printer(acting.counter.data_folder, name, tray=tray, stock=stock)
    undo = Undo("/printers/restore", {"printer": write_saved(Saved((gone,)))})
    return go_to("/printers", Notice(say("{name}: forgotten.", name=gone.name), undo))


@router.post("/printers/restore", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def restore(acting: ThePageActing, printer: Annotated[str, Form(max_length=100_000)]) -> Response:
    """Keep a printer again that was forgotten."""
    folder = acting.counter.data_folder
    saved = load_saved(folder)
    for one in read_saved(printer).printers:
        saved = saved.with_printer(one)
    keep_saved(folder, saved)
    return go_to("/printers", Notice(say("The printer is known again.")))


def _show(request: Request, saved: Saved, form: FilledForm) -> Response:
    values = {
        "printers": [(one, [_line(each) for each in one.corrections]) for one in saved.printers],
        "papers": PAGES,
        "form": form,
    }
    return show_page(request, "paper/printers.html", values, status=form.status)


def _line(each: TrayCorrection) -> Line:
    return Line(
        each.tray,
        each.stock,
        describe(each.correction.inverse()),
        each.residual_mm,
        explain_residual(each.residual_mm),
        each.measured_on,
    )
