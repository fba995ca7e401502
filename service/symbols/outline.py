"""A symbol's dark modules as one SVG path."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from service.symbols.symbol import QUIET_ZONE_MODULES, Symbol

Corner = tuple[int, int]
"""Row and column of a crossing of module edges, so that corners sort from the top left."""

_Ways = dict[Corner, list[Corner]]

# For each side of a module, clockwise: the module beyond it, and the corners where the side begins
# and ends, all as rows and columns from the module's own.
_SIDES = (
    ((-1, 0), (0, 0), (0, 1)),
    ((0, 1), (0, 1), (1, 1)),
    ((1, 0), (1, 1), (1, 0)),
    ((0, -1), (1, 0), (0, 0)),
)


def symbol_path(symbol: Symbol) -> str:
    """Give the outlines of the dark modules as an SVG path, in modules.

    The origin is the top left corner of the quiet zone, so it belongs in a view box of
    `0 0 n n` with n = `symbol.full_side_modules`. Outlines, not squares: squares side by side show
    fine light seams on screens. Each outline runs clockwise round what is dark, so either fill rule
    of SVG fills the same modules.
    """
    ways = _edges(symbol)
    outlines: list[str] = []
    for start in sorted(ways):
        while ways[start]:
            outlines.append(_write_outline(_walk(ways, start)))
    return "".join(outlines)


def _edges(symbol: Symbol) -> _Ways:
    """Collect every edge between dark and light, from corner to next corner, dark on its right."""
    ways: _Ways = {}
    for start, end in _directed_edges(symbol):
        ways.setdefault(start, []).append(end)
    return ways


def _directed_edges(symbol: Symbol) -> Iterator[tuple[Corner, Corner]]:
    dark = {
        (row, column)
        for row, modules in enumerate(symbol.modules)
        for column, module in enumerate(modules)
        if module
    }
    for row, column in sorted(dark):
        for beyond, start, end in _SIDES:
            if _moved(row, column, beyond) not in dark:
                yield _moved(row, column, start), _moved(row, column, end)


def _moved(row: int, column: int, by: tuple[int, int]) -> Corner:
    return (row + by[0], column + by[1])


def _walk(ways: _Ways, start: Corner) -> list[Corner]:
    """Follow edges from `start` until they lead back; as many enter each corner as leave it."""
    corners = [start]
    while True:
        corners.append(ways[corners[-1]].pop())
        if corners[-1] == start:
            return corners


def _write_outline(corners: list[Corner]) -> str:
    """Write a closed walk, straight runs joined; the last run is left to the closing `z`."""
    row, column = corners[0]
    runs = _join_runs(corners)[:-1]
    steps = "".join(f"{'h' if along else 'v'}{length}" for along, length in runs)
    return f"M{column + QUIET_ZONE_MODULES} {row + QUIET_ZONE_MODULES}{steps}z"


def _join_runs(corners: list[Corner]) -> list[tuple[bool, int]]:
    """Turn steps of one module into runs: whether along the row, and the signed length."""
    runs: list[tuple[bool, int]] = []
    for (row, column), (next_row, next_column) in pairwise(corners):
        along = row == next_row
        step = next_column - column if along else next_row - row
        if runs and runs[-1][0] == along:
            step += runs.pop()[1]
        runs.append((along, step))
    return runs
