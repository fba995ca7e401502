"""A sheet that was spoiled: its cards are marked, and printed alone at the next free position."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass

from service.errors import NotFoundError, UnknownStockError
from service.keeping.desk import Desk
from service.keeping.paper.own_stocks import find_any_stock
from service.keeping.printing.prints import AlsoSave, MadeRun, print_run, save_nothing_more
from service.pipeline.options import PrintOptions
from service.pipeline.ready import Progress, tell_nobody
from service.sheets.printers.printer import ANY_PRINTER, PrinterSetup
from service.sheets.printers.used_sheet import UsedSheet
from service.sheets.stock import Stock
from service.store.handles import Connection
from service.store.history import Stamp
from service.store.kept.used_sheets import load_used_sheets
from service.store.open import reading
from service.store.printed.card import PrintedCard, RunRecord
from service.store.printed.runs import load_run, load_run_record
from service.store.printed.states import mark_spoiled
from service.store.tables import CardState


@dataclass(frozen=True, slots=True)
class SpoiledSheet:
    """A sheet, from 1, of a file of a run, and the printer for what comes in its place."""

    run_id: int
    file: str
    sheet: int
    printer: PrinterSetup = ANY_PRINTER


def print_spoiled(
    desk: Desk,
    spoiled: SpoiledSheet,
    *,
    stamp: Stamp,
    on_progress: Progress = tell_nobody,
    also_save: AlsoSave = save_nothing_more,
) -> MadeRun:
    """Print the cards of a spoiled sheet again, as the records are now, on the same stock.

    A card of it that was withdrawn meanwhile is not wanted again. In place of a stock of the
    museum's own that was forgotten meanwhile one is chosen by measure. The new run and the marks on
    the spoiled cards are saved together.

    Raises:
        NotFoundError: When there is no such run, or no card lies on that sheet any more.
        ContentsError: When the containers get no such cards any more.
    """
    with reading(desk.engine) as connection:
        record = load_run_record(connection, spoiled.run_id)
        cards = load_run(connection, spoiled.run_id)
        begun = load_used_sheets(connection)
    ruined = [card for card in cards if _lies_on(card, spoiled)]
    if not ruined:
        name = f"{spoiled.file}, sheet {spoiled.sheet}"
        raise NotFoundError(name, what="sheet with cards")

    def mark_them(connection: Connection, made: MadeRun) -> None:
        for card in ruined:
            mark_spoiled(connection, card.card_id, stamp=stamp)
        also_save(connection, made)

    copies = Counter(card.made.key for card in ruined)
    options = PrintOptions(
        stock=_same_stock(desk, record, spoiled),
        only=frozenset(copies),
        copies=max(copies.values()),
        begun=_still_usable(begun, record, spoiled, cards),
        printer=spoiled.printer,
    )
    return print_run(desk, options, stamp=stamp, on_progress=on_progress, also_save=mark_them)


def _lies_on(card: PrintedCard, spoiled: SpoiledSheet) -> bool:
    return (
        card.made.file == spoiled.file
        and card.state not in {CardState.SPOILED, CardState.WITHDRAWN}
        and any(sheet == spoiled.sheet for sheet, _ in card.made.places)
    )


def _same_stock(desk: Desk, record: RunRecord, spoiled: SpoiledSheet) -> Stock | None:
    name = next(file.stock for file in record.files if file.name == spoiled.file)
    with suppress(UnknownStockError):
        return find_any_stock(desk.data_folder, name)
    return None


def _still_usable(
    begun: Sequence[UsedSheet],
    record: RunRecord,
    spoiled: SpoiledSheet,
    cards: Sequence[PrintedCard],
) -> tuple[UsedSheet, ...]:
    """Give the sheets begun, but not the spoiled one: the last sheet of a file is the one begun."""
    sheets = (
        sheet for card in cards if card.made.file == spoiled.file for sheet, _ in card.made.places
    )
    if max(sheets) != spoiled.sheet:
        return tuple(begun)
    stocks = {file.stock for file in record.files if file.name == spoiled.file}
    return tuple(sheet for sheet in begun if sheet.stock not in stocks)
