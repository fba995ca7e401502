"""Print runs from the store: made, proved, filed by SHA-256 and remembered card by card."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from dataclasses import dataclass, replace

from service.errors import ContentsError
from service.findings import Finding
from service.keeping.desk import Desk
from service.keeping.printing.wanted import load_wanted
from service.pipeline.options import Outcome, PrintFile, PrintOptions
from service.pipeline.ready import Progress, tell_nobody
from service.pipeline.run import print_collection
from service.sentence import Sentence
from service.sheets.printers.used_sheet import UsedSheet
from service.store.handles import Connection
from service.store.history import Stamp
from service.store.kept.used_sheets import keep_used_sheet
from service.store.open import writing
from service.store.printed.card import MadeCard, NewRun, PrintedCard, RunFile, describe_card
from service.store.printed.runs import save_run
from service.store.shelf.files import StoredFile
from service.store.shelf.photos import note_file

PDF = ".pdf"


@dataclass(frozen=True, slots=True)
class MadeRun:
    """A finished run: its number, files and cards, and what was noticed."""

    run_id: int
    files: tuple[RunFile, ...]
    cards: tuple[PrintedCard, ...]
    findings: tuple[Finding, ...]


AlsoSave = Callable[[Connection, MadeRun], None]
"""Called with the run inside the transaction that saves it."""


def save_nothing_more(_connection: Connection, _made: MadeRun) -> None:
    """Stand in where nothing else belongs to the run."""


def print_run(
    desk: Desk,
    options: PrintOptions,
    *,
    stamp: Stamp,
    on_progress: Progress = tell_nobody,
    also_save: AlsoSave = save_nothing_more,
) -> MadeRun:
    """Print cards of the store as the records are now, and remember each of them as made.

    The files are on the shelf before the store names them: a run that is cut short leaves at most
    files that no row names.

    Raises:
        ContentsError: When there is nothing to print, or nothing of it can be printed.
        NotFoundError: When the tag of an object is asked for that is not in the store.
        SheetError: When the stock asked for cannot take the pages.
        ProofFailedError: When a finished sheet does not read back as it should.
    """
    wanted = load_wanted(desk, replace(options, today=stamp.at.date()))
    outcome = print_collection(
        wanted.collection, wanted.photos, wanted.options, desk.workshop, on_progress=on_progress
    )
    if not outcome.files:
        message = Sentence(
            "None of the cards could be drawn. {message}", message=outcome.findings[0].message
        )
        raise ContentsError(message)
    folder = outcome.files[0].path.parent
    try:
        stored = [desk.shelf.put(file.path, PDF) for file in outcome.files]
    finally:
        shutil.rmtree(folder)
    files = tuple(map(_describe_file, outcome.files, stored))
    made = tuple(card for file in outcome.files for card in _describe_cards(file))
    run = NewRun(made, files, _describe_options(wanted.options))
    with writing(desk.engine) as connection:
        for file in stored:
            note_file(connection, file, stamp=stamp)
        cards = save_run(connection, run, stamp=stamp)
        _remember_sheets(connection, outcome, stamp)
        made_run = MadeRun(cards[0].run_id, files, cards, outcome.findings)
        also_save(connection, made_run)
    return made_run


def _describe_file(file: PrintFile, stored: StoredFile) -> RunFile:
    return RunFile(file.name, stored.sha256, stored.length_bytes, file.stock.name)


def _describe_cards(file: PrintFile) -> list[MadeCard]:
    return [
        replace(describe_card(placed.card, copy=placed.copy), file=file.name, places=placed.places)
        for placed in file.placed
    ]


def _describe_options(options: PrintOptions) -> dict[str, str]:
    """Keep what was asked for in words; what was printed is told by the cards themselves."""
    return {
        "kinds": " ".join(kind.code for kind in options.kinds),
        "stock": options.stock.name if options.stock else "",
        "paper": options.paper,
        "start_position": str(options.start_position),
        "skipped": " ".join(map(str, sorted(options.skipped))),
        "copies": str(options.copies),
        "printer": options.printer.printer.name,
        "tray": options.printer.tray,
    }


def _remember_sheets(connection: Connection, outcome: Outcome, stamp: Stamp) -> None:
    """Note which positions of the last sheet of each stock are gone."""
    last: dict[str, UsedSheet | None] = {file.stock.name: file.left_over for file in outcome.files}
    for stock, sheet in last.items():
        keep_used_sheet(connection, stock, sheet, stamp=stamp)
