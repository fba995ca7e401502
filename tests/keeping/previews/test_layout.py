"""Tests for what becomes of each position of a planned sheet."""

from __future__ import annotations

from pathlib import Path

from service.geometry import Insets, Rect
from service.keeping.previews.layout import PlannedSheet, PositionState, tell_sheets
from service.pipeline.options import PrintOptions
from service.pipeline.printing.lay import lay_file
from service.pipeline.printing.shelf import Shelf
from service.sheets.printers.printer import Printer, PrinterSetup
from tests.pipeline.printing.test_file import card, proved

FILLED, FREE = PositionState.FILLED, PositionState.FREE
SKIPPED, USED = PositionState.SKIPPED, PositionState.USED


def told(cards: int, options: PrintOptions, *, goes_on: bool = False) -> tuple[PlannedSheet, ...]:
    """Lay so many labels of one face on sheets of eight."""
    shelf = Shelf()
    shelf.add({"a": proved(Rect(5, 5, 50, 50))})
    made = [card(f"B-{number}") for number in range(1, cards + 1)]
    return tell_sheets(lay_file(made, shelf, options, Path()), goes_on=goes_on)


def states(sheet: PlannedSheet) -> list[PositionState]:
    """Give the state of each position in order."""
    return [one.state for one in sheet.positions]


def test_each_position_says_what_becomes_of_it() -> None:
    """Two before the start, one spoiled, two filled, the rest free."""
    (sheet,) = told(2, PrintOptions(start_position=3, skipped=frozenset({4})))
    assert states(sheet) == [SKIPPED, SKIPPED, FILLED, SKIPPED, FILLED, FREE, FREE, FREE]
    assert [one.key for one in sheet.positions if one.key] == [
        ("B-1", "end-label", 1),
        ("B-2", "end-label", 1),
    ]
    assert not sheet.is_begun


def test_a_sheet_begun_earlier_is_told_from_a_choice() -> None:
    """What was printed on before is used, not skipped, and only on the first sheet."""
    first, second = told(7, PrintOptions(start_position=3), goes_on=True)
    assert states(first) == [USED, USED, *[FILLED] * 6]
    assert states(second) == [FILLED, *[FREE] * 7]
    assert (first.is_begun, second.is_begun) == (True, False)


def test_copies_are_told_apart() -> None:
    """Copies of a face lie side by side."""
    (sheet,) = told(2, PrintOptions(copies=2))
    assert [(one.key and one.key[0], one.copy, one.face) for one in sheet.positions[:5]] == [
        ("B-1", 1, 1),
        ("B-1", 2, 1),
        ("B-2", 1, 1),
        ("B-2", 2, 1),
        (None, 0, 0),
    ]


def test_what_the_printer_does_not_reach_is_told() -> None:
    """A printer that leaves 60 mm white at the top inks no label of the first row."""
    printer = PrinterSetup(Printer("Old", Insets(60, 5, 5, 5)))
    (sheet,) = told(1, PrintOptions(printer=printer))
    not_reached = PositionState.NOT_REACHED
    assert states(sheet)[:4] == [not_reached, not_reached, FILLED, FREE]
