"""Paths of a print run before it is made: its files, sheets and positions, and their pictures."""

from __future__ import annotations

from typing import Annotated
from urllib.parse import quote

from fastapi import APIRouter, Path, Response
from pydantic import BaseModel

from service.jobs.kinds import look_up_options
from service.keeping.previews.layout import PlannedPosition, PlannedSheet, PositionState
from service.keeping.previews.pages import SheetFile, draw_sheet, find_planned_file, find_run_file
from service.keeping.previews.plans import Plan, PlannedFile, plan_run
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.replies.problems import FindingView, show_findings
from service.web.stocks import StockDrawing, draw_stock
from service.web.store.asking import TheCounter
from service.web.store.cards.prints import RunId
from service.web.store.cards.wanted import PrintBody
from service.web.store.previews.picture import PICTURE, Looking, SheetNumber, TheLooking

router = APIRouter(route_class=GatedRoute)

_FileName = Annotated[str, Path(max_length=300, examples=["end-label, A4 2x4 99.1x67.7.pdf"])]
_PlanName = Annotated[
    str,
    Path(max_length=64, description="The plan of POST /api/prints/preview.", examples=["5f" * 32]),
]


class PositionView(BaseModel):
    """A position, from 1; where it is filled, with which face (from 1) of which card's copy."""

    position: int
    state: PositionState
    number: str | None = None
    kind: str | None = None
    side: int | None = None
    copy_number: int | None = None
    face: int | None = None


class SheetView(BaseModel):
    """A sheet, from 1, with all its positions and its picture; `begun` was printed on before."""

    sheet: int
    begun: bool
    href: str
    positions: list[PositionView]


class PlannedFileView(BaseModel):
    """A file the run would make; `left_over` are the positions gone on its last sheet, if any."""

    name: str
    kind: str
    stock: StockDrawing
    cards: int
    sheets: list[SheetView]
    left_over: list[int] | None


class PlanView(BaseModel):
    """What a print run would make now; its pictures are kept for a while under `plan`."""

    plan: str
    files: list[PlannedFileView]
    findings: list[FindingView]


@router.post("/api/prints/preview", dependencies=[needs(Role.VIEW)])
def plan(body: PrintBody, counter: TheCounter) -> PlanView:
    """Show what printing would give: files, sheets, positions and findings. Nothing is printed.

    No card counts as made and no sheet as used; asked for later it shows what is so by then.
    """
    request = body.to_request(counter.data_folder)
    request.to_options()
    with counter.previewing() as desk:
        options = look_up_options(desk, request)
        return _show_plan(plan_run(desk, options, today=counter.now().date()))


@router.get(
    "/api/prints/preview/{plan}/files/{name}/sheets/{sheet}",
    response_class=Response,
    responses=PICTURE,
    dependencies=[needs(Role.VIEW)],
)
def planned_sheet(
    plan: _PlanName, name: _FileName, sheet: SheetNumber, looking: TheLooking
) -> Response:
    """Draw a sheet of a plan; plans are kept for a day at most, and the latest twenty only."""
    with looking.counter.previewing() as desk:
        file = find_planned_file(desk, plan, name)
    return _picture(looking, file, sheet)


@router.get(
    "/api/prints/{run}/files/{name}/pages/{page}",
    response_class=Response,
    responses=PICTURE,
    dependencies=[needs(Role.VIEW)],
)
def printed_page(run: RunId, name: _FileName, page: SheetNumber, looking: TheLooking) -> Response:
    """Draw a page of the PDF that a run gave; it never changes."""
    with looking.counter.previewing() as desk:
        file = find_run_file(desk, run, name)
    return _picture(looking, file, page)


def _picture(looking: Looking, file: SheetFile, page: int) -> Response:
    def draw() -> bytes:
        with looking.counter.previewing() as desk:
            return draw_sheet(desk, file, page, width_px=looking.width_px)

    return looking.answer(file.tag(page, width_px=looking.width_px), draw)


def _show_plan(plan: Plan) -> PlanView:
    return PlanView(
        plan=plan.name,
        files=[_show_file(plan.name, file) for file in plan.files],
        findings=show_findings(plan.findings),
    )


def _show_file(plan: str, planned: PlannedFile) -> PlannedFileView:
    file = planned.file
    at = f"/api/prints/preview/{plan}/files/{quote(file.name)}/sheets"
    return PlannedFileView(
        name=file.name,
        kind=file.kind.code,
        stock=draw_stock(file.stock),
        cards=file.cards,
        sheets=[_show_sheet(at, sheet) for sheet in planned.sheets],
        left_over=None if file.left_over is None else sorted(file.left_over.positions),
    )


def _show_sheet(at: str, sheet: PlannedSheet) -> SheetView:
    return SheetView(
        sheet=sheet.number,
        begun=sheet.is_begun,
        href=f"{at}/{sheet.number}",
        positions=[_show_position(one) for one in sheet.positions],
    )


def _show_position(one: PlannedPosition) -> PositionView:
    if one.key is None:
        return PositionView(position=one.position, state=one.state)
    number, kind, side = one.key
    return PositionView(
        position=one.position,
        state=one.state,
        number=number,
        kind=kind,
        side=side,
        copy_number=one.copy,
        face=one.face,
    )
