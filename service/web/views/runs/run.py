"""One print run: its files to print, its cards, and a sheet that was spoiled."""

from __future__ import annotations

from collections import Counter as Tally
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Annotated
from urllib.parse import quote

from fastapi import APIRouter, Path, Request, Response

from service.cards.kinds import find_kind
from service.errors import ServiceError
from service.jobs.requests import SpoiledRequest
from service.keeping.printing.printers_file import name_printer
from service.keeping.sending.send import list_senders
from service.languages.saying import said, say
from service.store.people.role import Role
from service.store.printed.card import PrintedCard, RunFile, RunRecord
from service.store.printed.runs import load_run, load_run_record
from service.store.tables import CardState
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.store.counter import Counter
from service.web.views.desk.form import Sent, text
from service.web.views.desk.make import put_in_line
from service.web.views.desk.offer import name_old
from service.web.views.desk.settings import list_settings, read_printer
from service.web.views.language.telling import tell_error
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.notice import go_to
from service.web.views.shell.page import show_page
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)

RunId = Annotated[int, Path(ge=1, lt=2**31)]
MOST_CARDS = 300
"""More cards than this are not listed one by one; the walk has them all."""
_EMPTY = FilledForm()


@dataclass(frozen=True, slots=True)
class File:
    """A PDF: where it is to be had, its sheets, and how many cards are on it."""

    name: str
    kind: str
    href: str
    stock: str
    sheets: int
    cards: int
    kilobytes: int


@dataclass(frozen=True, slots=True)
class Line:
    """A card in the list of a run."""

    card: PrintedCard
    kind: str
    version: str


@router.get("/run/{run}", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def run_page(request: Request, run: RunId, counter: TheCounter) -> Response:
    """Show a run."""
    return _show(request, counter, run, _EMPTY)


@router.post("/run/spoiled", include_in_schema=False, dependencies=[needs(Role.PRINT)])
def spoil_sheet(request: Request, acting: ThePageActing, sent: Sent) -> Response:
    """Print the cards of a spoiled sheet again, as a task of its own."""
    run, sheet = _read_run(text(sent, "run")), text(sent, "sheet")
    name, tray = read_printer(text(sent, "printer"))
    with acting.counter.reading() as connection:
        load_run_record(connection, run)
    faults = {}
    if not (sheet.isascii() and sheet.isdigit() and 0 < len(sheet) < _DIGITS and int(sheet)):
        faults["sheet"] = say("Give the number of the sheet, counted from 1.")
    try:
        name_printer(acting.counter.data_folder, name, tray)
    except ServiceError as error:
        faults["printer"] = tell_error(error)
    if faults:
        typed = {name: text(sent, name) for name in ("file", "sheet", "printer")}
        return _show(request, acting.counter, run, FilledForm(typed, faults))
    wanted = SpoiledRequest(run, text(sent, "file"), int(sheet), name, tray)
    return go_to(f"/tasks/{put_in_line(acting, wanted)}")


def _read_run(typed: str) -> int:
    """Read the number of a run; what is none is that of no run."""
    return int(typed) if typed.isascii() and typed.isdigit() and len(typed) <= _DIGITS else 0


_DIGITS = 8


def _show(request: Request, counter: Counter, run: int, form: FilledForm) -> Response:
    with counter.reading() as connection:
        record = load_run_record(connection, run)
        cards = load_run(connection, run)
    states = Tally(card.state for card in cards)
    values = {
        "run": record,
        "files": list_files(record, cards),
        "lines": [_line(card) for card in cards[:MOST_CARDS]],
        "more": len(cards) - MOST_CARDS,
        "waiting": states[CardState.MADE],
        "attached": states[CardState.ATTACHED],
        "printers": list_settings(counter.data_folder).printers,
        "senders": list_senders(counter.data_folder),
        "form": form,
        "file_names": [(file.name, file.name) for file in record.files],
    }
    return show_page(request, "runs/run.html", values, status=form.status)


def list_files(record: RunRecord, cards: Sequence[PrintedCard]) -> tuple[File, ...]:
    """List the PDFs of a run with what one needs to print them."""
    return tuple(_file(record.run_id, file, cards) for file in record.files)


def _file(run: int, file: RunFile, cards: Sequence[PrintedCard]) -> File:
    on_it = [card for card in cards if card.made.file == file.name]
    sheets = max((sheet for card in on_it for sheet, _ in card.made.places), default=1)
    kinds = dict.fromkeys(said(find_kind(card.made.kind).name) for card in on_it)
    return File(
        file.name,
        ", ".join(kinds) or file.name,
        f"/api/prints/{run}/files/{quote(file.name, safe='')}",
        file.stock,
        sheets,
        len(on_it),
        max(1, file.length_bytes // 1000),
    )


def _line(card: PrintedCard) -> Line:
    return Line(card, said(find_kind(card.made.kind).name), name_old(card.made))
