from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.geometry import Insets
from service.sheets.impose import Face, impose_pages
from service.sheets.printers.printer import Printer, PrinterSetup
from service.sheets.printers.used_sheet import (
    Start,
    UsedSheet,
    left_over,
    next_start,
    remember,
)
from service.sheets.stocks import STOCKS, find_stock

LABELS = find_stock("A4 2x4 99.1x67.7", STOCKS)
FACE = Face("x", LABELS.label)


@pytest.mark.parametrize(
    ("gone", "expected"),
    [
        (None, Start()),
        ({1, 2, 3}, Start(4)),
        ({1, 3, 5}, Start(2, frozenset({3, 5}))),
        ({2}, Start(1, frozenset({2}))),
        (set(range(1, 9)), Start()),
        ({1, 99}, Start(2)),
    ],
    ids=["nothing known", "begun", "holes", "hole", "full", "beyond the sheet"],
)
def test_goes_on_at_the_first_free_position(gone: set[int] | None, expected: Start) -> None:
    """What is gone is left out; a full or unknown sheet is followed by a fresh one."""
    used = [] if gone is None else [UsedSheet(LABELS.name, frozenset(gone))]
    assert next_start([UsedSheet("other", frozenset({1})), *used], LABELS) == expected


@given(st.lists(st.integers(1, 20), min_size=1, max_size=6), st.sets(st.integers(1, 7)))
def test_runs_that_go_on_use_each_position_once(counts: list[int], spoiled: set[int]) -> None:
    """However many runs go on with a sheet, no position is printed twice and none is lost."""
    used = remember([], LABELS.name, UsedSheet(LABELS.name, frozenset(spoiled)))
    printed: list[list[int]] = [[]]
    for count in counts:
        start = next_start(used, LABELS)
        sheets = impose_pages(
            [FACE] * count, LABELS, start_position=start.position, skipped=start.skipped
        )
        for number, sheet in enumerate(sheets):
            if number:
                printed.append([])
            printed[-1] += [placement.position for placement in sheet.placements]
        rest = left_over(sheets, start)
        used = remember(used, LABELS.name, rest)
        if rest is None:
            printed.append([])
    every = list(range(1, 9))
    first, *others = printed
    assert first == [n for n in every if n not in spoiled][: len(first)]
    assert all(others_of == every[: len(others_of)] for others_of in others)
    assert all(len(full) == len(every) for full in others[:-1])
    assert sum(len(positions) for positions in printed) == sum(counts)


def test_a_sheet_that_was_left_out_is_not_gone_on_with() -> None:
    """Where the printer did not reach what was left of a sheet, the fresh one is remembered."""
    inkjet = PrinterSetup(Printer("Inkjet", Insets(4, 4, 13, 4)))
    full_bleed = find_stock("A4 2x4 105x74", STOCKS)
    start = Start(7)
    sheets = impose_pages(
        [Face("x", full_bleed.label)], full_bleed, start_position=start.position, printer=inkjet
    )
    assert left_over(sheets, start) == UsedSheet(full_bleed.name, frozenset({1}))


def test_no_sheet_leaves_nothing() -> None:
    """A run without pages changes nothing that could be remembered."""
    assert left_over([], Start()) is None


def test_remembers_one_sheet_a_stock() -> None:
    """The newest sheet of a stock stands for it; a full one is forgotten."""
    one, other = UsedSheet("B", frozenset({1})), UsedSheet("A", frozenset({2}))
    both = remember(remember([], "B", one), "A", other)
    assert both == (other, one)
    assert remember(both, "B", None) == (other,)
