"""Sheets of labels that were begun: which positions are gone, where the next run starts."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from service.sheets.impose import Sheet
from service.sheets.stock import Stock


@dataclass(frozen=True, slots=True)
class UsedSheet:
    """A sheet of a stock, by the stock's name, with positions that are used or spoiled."""

    stock: str
    positions: frozenset[int]


@dataclass(frozen=True, slots=True)
class Start:
    """Where a run begins on its first sheet, as `impose_pages` takes it."""

    position: int = 1
    skipped: frozenset[int] = frozenset()


def next_start(used: Iterable[UsedSheet], stock: Stock) -> Start:
    """Give where a run goes on: the first free position of the sheet begun, else a fresh sheet."""
    gone = next((sheet.positions for sheet in used if sheet.stock == stock.name), frozenset())
    free = [position for position in range(1, stock.positions + 1) if position not in gone]
    if not free:
        return Start()
    skipped = frozenset(n for n in gone if free[0] < n <= stock.positions)
    return Start(free[0], skipped)


def left_over(sheets: Sequence[Sheet], start: Start) -> UsedSheet | None:
    """Give the last sheet of a run as it is afterwards; None where nothing of it is left.

    `start` is where the run began: what was gone before stays gone if the sheet is still the same.
    """
    if not sheets:
        return None
    last = sheets[-1]
    gone = {placement.position for placement in last.placements}
    before = set(range(1, start.position)) | start.skipped
    # A page where something was gone stands on a fresh sheet: the printer did not reach the rest.
    if len(sheets) == 1 and not gone & before:
        gone |= before
    full = len(gone) >= last.stock.positions
    return None if full else UsedSheet(last.stock.name, frozenset(gone))


def remember(
    used: Iterable[UsedSheet], stock: str, sheet: UsedSheet | None
) -> tuple[UsedSheet, ...]:
    """Give the sheets begun with this one in place of the one of its stock, in order of names."""
    others = [each for each in used if each.stock != stock]
    kept = others if sheet is None else [*others, sheet]
    return tuple(sorted(kept, key=lambda each: each.stock))
