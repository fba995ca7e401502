"""What was measured on a ruler sheet, cross by cross, becomes the correction of a printer."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import Annotated

from fastapi import APIRouter, Depends, Query, Request, Response

from service.errors import CalibrationError
from service.keeping.paper.measured import (
    Entered,
    Measures,
    enter_measures,
    find_paper,
    find_printer,
)
from service.keeping.paper.own_stocks import load_own_stocks
from service.keeping.printing.printers_file import load_saved
from service.languages.saying import say
from service.sheets.calibration.limits import describe, explain_residual
from service.sheets.calibration.ruler_sheet import Cross, crosses_on
from service.sheets.printers.saved import Saved, write_saved
from service.sheets.stocks import PAGES, STOCKS
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.views.language.telling import tell_fault
from service.web.views.paper.drawing import draw_crosses, figure
from service.web.views.shell.forms import WHOLE, FilledForm
from service.web.views.shell.notice import Notice, Undo, go_to
from service.web.views.shell.page import show_page
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)

_LENGTH = re.compile(r"\d{1,3}(?:[.,]\d{1,3})?", re.ASCII)
_NAMED = re.compile(r"cross (\w+): (across|down): ")
_DEPTHS = ("across", "down")


async def _typed(request: Request) -> Mapping[str, str]:
    form = await request.form()
    return {name: value.strip() for name, value in form.items() if isinstance(value, str)}


@router.get("/printers/measure", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def measure(
    request: Request,
    counter: TheCounter,
    paper: Annotated[str, Query(max_length=20)] = "A4",
    printer: Annotated[str, Query(max_length=200)] = "",
) -> Response:
    """Ask for the measures of each cross of a ruler sheet."""
    return _show(request, counter, FilledForm({"paper": paper, "printer": printer}))


@router.post("/printers/measure", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def enter(
    request: Request, acting: ThePageActing, typed: Annotated[Mapping[str, str], Depends(_typed)]
) -> Response:
    """Work the correction out and keep it; a cross that cannot be right is named."""
    counter, paper = acting.counter, typed.get("paper", "")
    crosses = crosses_on(find_paper(paper))
    faults = dict(find_faults(typed, crosses))
    if faults:
        return _show(request, counter, FilledForm(typed, faults))
    measures = Measures(
        typed["printer"],
        tuple(read_crosses(typed, crosses)),
        typed.get("tray", ""),
        typed.get("stock", ""),
        paper,
    )
    before = find_printer(load_saved(counter.data_folder), measures.printer)
    try:
        entered = enter_measures(counter.data_folder, measures, acting.stamp.at.date())
    except CalibrationError as error:
        return _show(request, counter, FilledForm(typed, name_fields(error)))
    undo = Undo("/printers/forget", {"name": entered.printer.name})
    if before is not None:
        undo = Undo("/printers/restore", {"printer": write_saved(Saved((before,)))})
    return go_to("/printers", Notice(_tell(entered), undo))


def find_faults(typed: Mapping[str, str], crosses: tuple[Cross, ...]) -> Iterator[tuple[str, str]]:
    """Say by field what is missing or no length."""
    if not typed.get("printer"):
        yield "printer", say("Give the printer a name, as you call it.")
    for cross in crosses:
        names = [f"{cross.name}_{depth}" for depth in _DEPTHS]
        said = [typed.get(name, "") for name in names]
        for name, text in zip(names, said, strict=True):
            if text and not _LENGTH.fullmatch(text):
                yield name, say("Cross {name}: write millimetres, such as 15.25.", name=cross.name)
            elif not text and any(said):
                yield (
                    name,
                    say(
                        "Cross {name}: measure both ways, or leave the cross out.", name=cross.name
                    ),
                )
    if not any(read_crosses(typed, crosses)):
        yield WHOLE, say("Measure four crosses at the least: A, B, C and D.")


def read_crosses(typed: Mapping[str, str], crosses: tuple[Cross, ...]) -> Iterator[str]:
    """Give the crosses that were measured both ways, as they are typed for the command."""
    for cross in crosses:
        across, down = (typed.get(f"{cross.name}_{depth}", "") for depth in _DEPTHS)
        if across and down:
            yield f"{cross.name}={across}/{down}"


def name_fields(error: CalibrationError) -> Mapping[str, str]:
    """Put each fault beside the field of the measure that it names; the others stand on top."""
    faults: dict[str, str] = {}
    for fault in error.faults:
        named = _NAMED.findall(fault)
        words = tell_fault(fault)
        for cross, depth in named or [("", "")]:
            faults[f"{cross}_{depth}" if cross else WHOLE] = words
    return faults


def _tell(entered: Entered) -> str:
    name, found = entered.printer.name, entered.calibration
    if found is None:
        return say("{name} is kept.", name=name)
    worst_mm = found.largest_residual_mm
    return say(
        "{name} prints {how}. Corrected, the worst cross is {worst_mm:.2f} mm off: {why}.",
        name=name,
        how=describe(found.printer),
        worst_mm=worst_mm,
        why=explain_residual(worst_mm),
    )


def _show(request: Request, counter: TheCounter, form: FilledForm) -> Response:
    paper = form.value("paper", "A4")
    size = find_paper(paper)
    own = load_own_stocks(counter.data_folder)
    values = {
        "form": form,
        "paper": next(name for name in PAGES if name.casefold() == paper.casefold()),
        "papers": PAGES,
        "crosses": crosses_on(size),
        "drawing": figure(draw_crosses(size), "ruler-drawing"),
        "printers": [one.name for one in load_saved(counter.data_folder).printers],
        "stocks": [(one.name, one.name) for one in (*own, *STOCKS)],
    }
    return show_page(request, "paper/measured.html", values, status=form.status)
