"""Tests for printing the cards of a spoiled sheet alone."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.kinds import END_LABEL
from service.errors import NotFoundError
from service.keeping.desk import Desk
from service.keeping.paper.own_stocks import forget_own_stock, keep_own_stock
from service.keeping.printing.attach import attach_card
from service.keeping.printing.prints import print_run
from service.keeping.printing.spoil import SpoiledSheet, print_spoiled
from service.pipeline.options import PrintOptions, object_tag_keys
from service.sheets.printers.printer import Printer, find_setup
from service.store.open import reading, writing
from service.store.printed.runs import load_run, load_run_record
from service.store.tables import CardState
from tests.keeping.made import BOX, GOWN, LEAD
from tests.store.made import LATER, STAMP

pytestmark = pytest.mark.print

FILE = "end-label, A4 2x4 99.1x67.7.pdf"
OURS = {
    "name": "Ours",
    "page": "A4",
    "columns": "1",
    "rows": "3",
    "label_width": "120 mm",
    "label_height": "80 mm",
}
LABELS = PrintOptions(kinds=(END_LABEL,), containers=frozenset({BOX}), start_position=8)


def test_only_the_spoiled_sheet_is_printed_again(desk: Desk) -> None:
    """The label on sheet 1 goes where sheet 2 has its next free position."""
    made = print_run(desk, LABELS, stamp=STAMP)
    assert [card.made.places for card in made.cards] == [((1, 8),), ((2, 1),)]
    again = print_spoiled(desk, SpoiledSheet(made.run_id, FILE, 1), stamp=LATER)
    assert [(card.made.side, card.made.places) for card in again.cards] == [(1, ((1, 2),))]
    with reading(desk.engine) as connection:
        states = [card.state for card in load_run(connection, made.run_id)]
    assert states == [CardState.SPOILED, CardState.MADE]


def test_a_spoiled_last_sheet_is_not_gone_on_with(desk: Desk) -> None:
    """What is left of the spoiled sheet itself is of no use: a fresh one is begun."""
    made = print_run(desk, LABELS, stamp=STAMP)
    again = print_spoiled(desk, SpoiledSheet(made.run_id, FILE, 2), stamp=LATER)
    assert [(card.made.side, card.made.places) for card in again.cards] == [(2, ((1, 1),))]


def test_another_printer_can_be_named(desk: Desk) -> None:
    """The new run is corrected for the printer that is to make it, and says so."""
    made = print_run(desk, LABELS, stamp=STAMP)
    copier = find_setup([Printer("Copier")], "copier")
    again = print_spoiled(desk, SpoiledSheet(made.run_id, FILE, 1, copier), stamp=LATER)
    with reading(desk.engine) as connection:
        assert load_run_record(connection, again.run_id).options["printer"] == "Copier"


def test_a_sheet_is_spoiled_once(desk: Desk) -> None:
    """Where no card is left on a sheet there is nothing to print again."""
    made = print_run(desk, LABELS, stamp=STAMP)
    spoiled = SpoiledSheet(made.run_id, FILE, 1)
    print_spoiled(desk, spoiled, stamp=LATER)
    with pytest.raises(NotFoundError, match="sheet 1"):
        print_spoiled(desk, spoiled, stamp=LATER)
    with pytest.raises(NotFoundError, match="print run"):
        print_spoiled(desk, SpoiledSheet(999, FILE, 1), stamp=LATER)


def test_what_was_withdrawn_is_not_printed_again(desk: Desk) -> None:
    """A newer label took the place of side 2; only the other one of that sheet is wanted."""
    made = print_run(desk, replace(LABELS, start_position=1), stamp=STAMP)
    newer = print_run(desk, LABELS, stamp=STAMP)
    with writing(desk.engine) as connection:
        for run in (made, newer):
            label = next(card for card in run.cards if card.made.side == 2)
            attach_card(connection, label.card_id, stamp=STAMP)
    again = print_spoiled(desk, SpoiledSheet(made.run_id, FILE, 1), stamp=LATER)
    assert [card.made.side for card in again.cards] == [1]


def test_the_same_stock_is_taken_while_it_is_known(desk: Desk) -> None:
    """One of the museum's own, too; forgotten, the cards go where they suit."""
    ours = keep_own_stock(desk.data_folder, OURS)
    made = print_run(desk, replace(LABELS, stock=ours, start_position=1), stamp=STAMP)
    sheet = SpoiledSheet(made.run_id, made.files[0].name, 1)
    again = print_spoiled(desk, sheet, stamp=LATER)
    assert [file.stock for file in again.files] == ["Ours"]
    forget_own_stock(desk.data_folder, "Ours")
    sheet = SpoiledSheet(again.run_id, again.files[0].name, again.cards[0].made.places[0][0])
    assert print_spoiled(desk, sheet, stamp=LATER).files[0].stock == "A4 2x4 99.1x67.7"


def test_a_spoiled_sheet_of_tags_is_printed_again(desk: Desk) -> None:
    """Its tags alone, and the old ones count no more."""
    first = print_run(desk, PrintOptions(only=object_tag_keys([LEAD, GOWN])), stamp=STAMP)
    sheet = SpoiledSheet(first.run_id, first.files[0].name, 1)
    again = print_spoiled(desk, sheet, stamp=LATER)
    on_sheet = {card.made.key for card in first.cards if card.made.file == first.files[0].name}
    assert {card.made.key for card in again.cards} == on_sheet
    with reading(desk.engine) as connection:
        spoiled = {
            card.made.key
            for card in load_run(connection, first.run_id)
            if card.state is CardState.SPOILED
        }
    assert spoiled == on_sheet
