"""The papers of the round as PDFs to open and print; making one keeps nothing."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import Annotated

from fastapi import APIRouter, Query, Response

from service.keeping.rounds.check_sheet import SheetWish, print_sheet
from service.keeping.rounds.isolation import IsolationWish, print_isolation
from service.pipeline.documents.document import WHOLE_PAGE
from service.sentence import Sentence
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.replies.refusals import Refusal, RefusedError
from service.web.views.checks.wish import TheWish
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)


@router.get("/checks/sheet/{paper}", include_in_schema=False, dependencies=[needs(Role.PACK)])
def sheet(acting: ThePageActing, wish: TheWish, paper: str) -> Response:
    """Give the check sheet."""
    wanted = SheetWish(wish.within, wish.kinds, _checked(paper), wish.place)
    with acting.counter.working() as desk:
        return _reply(print_sheet(desk, wanted, stamp=acting.stamp))


@router.get(
    "/checks/isolation-label/{paper}", include_in_schema=False, dependencies=[needs(Role.PACK)]
)
def isolation_label(
    acting: ThePageActing,
    paper: str,
    number: Annotated[str, Query(min_length=1, max_length=200)],
    why: Annotated[str, Query(max_length=1000)] = "",
) -> Response:
    """Give the label of something to be kept apart, from today."""
    wanted = IsolationWish(number, why, paper=_checked(paper))
    with acting.counter.working() as desk:
        return _reply(print_isolation(desk, wanted, stamp=acting.stamp))


def _checked(paper: str) -> str:
    """Give the name of a paper.

    Raises:
        RefusedError: When there is no such paper.
    """
    if paper not in WHOLE_PAGE:
        raise RefusedError(
            Refusal.NOT_FOUND,
            Sentence("There is paper for {whole_page}.", whole_page=", ".join(WHOLE_PAGE)),
        )
    return paper


def _reply(path: Path) -> Response:
    try:
        data = path.read_bytes()
    finally:
        shutil.rmtree(path.parent)
    headers = {"Content-Disposition": f'inline; filename="{path.name}"'}
    return Response(data, media_type="application/pdf", headers=headers)
