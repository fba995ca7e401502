"""Paths of print runs: made, listed, and their PDFs byte for byte."""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated
from urllib.parse import quote

from fastapi import APIRouter, Path, Response

from service.errors import NotFoundError
from service.jobs.kinds import look_up_options
from service.keeping.desk import Desk
from service.keeping.printing.printers_file import name_printer
from service.keeping.printing.prints import PDF, AlsoSave, MadeRun, print_run
from service.keeping.printing.spoil import SpoiledSheet, print_spoiled
from service.sentence import Sentence
from service.store.handles import Connection
from service.store.people.role import Role
from service.store.printed.runs import list_runs, load_run, load_run_record
from service.web.access.gate import GatedRoute, needs
from service.web.replies.problems import show_findings
from service.web.store.asking import Asked, TheAsked, TheCounter
from service.web.store.cards.shapes import (
    MadeRunView,
    RunPage,
    RunView,
    show_line,
    show_run,
)
from service.web.store.cards.wanted import PrintBody, SpoiledBody
from service.web.store.once import Made, find_again, keep_made
from service.web.store.paging import ThePaging, read_count

router = APIRouter(route_class=GatedRoute)

RunId = Annotated[int, Path(ge=1, lt=2**31, examples=[1])]
_Print = Callable[[Desk, AlsoSave], MadeRun]


@router.get("/api/prints", dependencies=[needs(Role.VIEW)])
def prints(counter: TheCounter, paging: ThePaging) -> RunPage:
    """List print runs, the latest first."""
    before = read_count(paging.after)
    with counter.reading() as connection:
        found = list_runs(connection, limit=paging.limit + 1, before=before)
    shown = found[: paging.limit]
    paging.link_next(str(shown[-1].run_id) if len(found) > len(shown) else "")
    return RunPage(runs=[show_line(run) for run in shown])


@router.post(
    "/api/prints", dependencies=[needs(Role.PRINT)], status_code=201, response_model=MadeRunView
)
def print_cards(body: PrintBody, asked: TheAsked) -> Response:
    """Print cards as the records are now, prove every page, and remember each card.

    A card counts as made until somebody says that it is attached.
    """
    request = body.to_request(asked.counter.data_folder)
    # What does not exist is refused before anybody waits for the workshop.
    request.to_options()

    def make(desk: Desk, also_save: AlsoSave) -> MadeRun:
        options = look_up_options(desk, request)
        return print_run(desk, options, stamp=asked.stamp, also_save=also_save)

    return _print_once(asked, body.model_dump_json(), make)


@router.get("/api/prints/{run}", dependencies=[needs(Role.VIEW)])
def print_by_number(run: RunId, counter: TheCounter) -> RunView:
    """Give a print run with its files and cards."""
    with counter.reading() as connection:
        return show_run(load_run_record(connection, run), load_run(connection, run))


@router.get(
    "/api/prints/{run}/files/{name}",
    dependencies=[needs(Role.VIEW)],
    response_class=Response,
    responses={200: {"content": {"application/pdf": {}}}},
)
def print_file(
    run: RunId,
    name: Annotated[str, Path(max_length=300, examples=["end-label, A4 2x4 99.1x67.7.pdf"])],
    counter: TheCounter,
) -> Response:
    """Give a PDF of a run byte for byte as it was printed.

    Raises:
        NotFoundError: When the run has no such file.
    """
    with counter.reading() as connection:
        record = load_run_record(connection, run)
    for file in record.files:
        if file.name == name:
            headers = {
                "Content-Disposition": f"inline; filename*=UTF-8''{quote(name)}",
                "ETag": f'"{file.sha256}"',
            }
            data = counter.shelf.get(file.sha256, PDF)
            return Response(data, media_type="application/pdf", headers=headers)
    raise NotFoundError(name, what=Sentence("file in run {run}", run=run))


@router.post(
    "/api/prints/{run}/spoiled",
    dependencies=[needs(Role.PRINT)],
    status_code=201,
    response_model=MadeRunView,
)
def print_spoiled_again(run: RunId, body: SpoiledBody, asked: TheAsked) -> Response:
    """Mark the cards of a spoiled sheet, and print them again at the next free position."""

    def make(desk: Desk, also_save: AlsoSave) -> MadeRun:
        printer = name_printer(desk.data_folder, body.printer, body.tray)
        sheet = SpoiledSheet(run, body.file, body.sheet, printer)
        return print_spoiled(desk, sheet, stamp=asked.stamp, also_save=also_save)

    return _print_once(asked, body.model_dump_json(), make)


def _print_once(asked: Asked, sent: str, make: _Print) -> Response:
    """Print, and keep the reply in the transaction that saves the run."""

    def also_save(connection: Connection, made: MadeRun) -> None:
        keep_made(connection, asked, sent, _tell(connection, made))

    with asked.counter.working() as desk:
        with asked.counter.reading() as connection:
            again = find_again(connection, asked, sent)
        if again is not None:
            return again
        made = make(desk, also_save)
    with asked.counter.reading() as connection:
        return _tell(connection, made).to_response()


def _tell(connection: Connection, made: MadeRun) -> Made:
    record, cards = load_run_record(connection, made.run_id), load_run(connection, made.run_id)
    body = MadeRunView(**dict(show_run(record, cards)), findings=show_findings(made.findings))
    return Made(body, headers={"Location": f"/api/prints/{made.run_id}"})
