"""Sheets to test paper and printers with, as PDFs; making one keeps nothing."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Path, Response

from service.keeping.paper.measured import find_paper
from service.keeping.paper.own_stocks import find_any_stock
from service.render.ruler_sheet import draw_ruler_sheet
from service.sheets.calibration.outline_page import outline_page
from service.sheets.calibration.ruler_page import ruler_page
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter

router = APIRouter(route_class=GatedRoute)


@router.get(
    "/printers/ruler-sheet/{paper}", include_in_schema=False, dependencies=[needs(Role.VIEW)]
)
def ruler_sheet(counter: TheCounter, paper: Annotated[str, Path(max_length=20)]) -> Response:
    """Give the sheet of crosses for a paper."""
    size = find_paper(paper)
    with counter.working() as desk:
        page = ruler_page(size, desk.workshop.ruler)
        return _as_pdf(draw_ruler_sheet(page, desk.workshop.frames), "ruler-sheet")


@router.get(
    "/stocks/test-sheet/{name:path}", include_in_schema=False, dependencies=[needs(Role.VIEW)]
)
def test_sheet(counter: TheCounter, name: Annotated[str, Path(max_length=200)]) -> Response:
    """Give the outlines of a stock."""
    stock = find_any_stock(counter.data_folder, name)
    with counter.working() as desk:
        page = outline_page(stock, desk.workshop.ruler)
        return _as_pdf(draw_ruler_sheet(page, desk.workshop.frames), "test-sheet")


def _as_pdf(data: bytes, name: str) -> Response:
    headers = {"Content-Disposition": f'inline; filename="{name}.pdf"'}
    return Response(data, media_type="application/pdf", headers=headers)
