"""Tests for printing the cards of a spoiled sheet alone."""

from __future__ import annotations

import pytest

from service.cards.kinds import END_LABEL
from service.errors import NotFoundError
from service.keeping.desk import Desk
from service.keeping.printing.prints import print_run
from service.keeping.printing.spoil import SpoiledSheet, print_spoiled
from service.pipeline.options import PrintOptions, object_tag_keys
from service.sheets.printers.printer import Printer, find_setup
from service.store.open import reading
from service.store.printed.runs import load_run, load_run_record
from service.store.tables import CardState
from tests.keeping.made import BOX, GOWN, LEAD
from tests.store.made import LATER, STAMP

pytestmark = pytest.mark.print

FILE = "end-label, A4 2x4 99.1x67.7.pdf"
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
