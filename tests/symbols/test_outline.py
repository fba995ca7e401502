from __future__ import annotations

import re

import pytest

from service.symbols.outline import symbol_path
from service.symbols.symbol import Level, Mode, Symbol, encode_symbol


def drawn(rows: str) -> Symbol:
    """Make a symbol of a drawing, rows parted by blanks; it stands for no text."""
    modules = tuple(bytes(int(sign) for sign in row) for row in rows.split())
    return Symbol("", Level.L, Mode.BYTE, 0, modules)


def filled(path: str, side: int) -> list[list[int]]:
    """Count for the middle of every module how often the outlines run round it, clockwise."""
    turns = [[0] * side for _ in range(side)]
    for outline in path.split("z")[:-1]:
        match = re.match(r"M(\d+) (\d+)", outline)
        assert match
        start_x, start_y = x, y = int(match[1]), int(match[2])
        steps = re.findall(r"([hv])(-?\d+)", outline)
        for way, text in steps:
            if way == "h":
                x += int(text)
            else:
                _cross(turns, x, y, y + int(text))
                y += int(text)
        # The closing line is level or upright; a level one turns round nothing.
        assert x == start_x or y == start_y
        _cross(turns, x, y, start_y)
    return turns


def _cross(turns: list[list[int]], x: int, from_y: int, to_y: int) -> None:
    """Let an upright line turn round everything on its left when it goes down."""
    for row in range(min(from_y, to_y), max(from_y, to_y)):
        for column in range(x):
            turns[row][column] += 1 if to_y > from_y else -1


@pytest.mark.parametrize(
    ("rows", "path"),
    [
        ("0", ""),
        ("1", "M4 4h1v1h-1z"),
        ("11 11", "M4 4h2v2h-2z"),
        ("111 101 111", "M4 4h3v3h-3zM5 5v1h1v-1z"),
    ],
    ids=["nothing", "one module", "a block", "a ring"],
)
def test_draws_outlines(rows: str, path: str) -> None:
    """Modules side by side share one outline; a hole has its own, the other way round."""
    assert symbol_path(drawn(rows)) == path
    assert filled(symbol_path(drawn(rows)), 12) == _framed(drawn(rows), 12)


@pytest.mark.parametrize("rows", ["10 01", "01 10", "101 010 101"])
def test_corners_that_touch(rows: str) -> None:
    """Modules that touch by a corner alone are filled, and nothing between them."""
    assert filled(symbol_path(drawn(rows)), 12) == _framed(drawn(rows), 12)


@pytest.mark.parametrize("payload", ["1", "https://example.org/o/2024.12.3a", "x" * 300])
def test_fills_the_dark_modules_once(payload: str) -> None:
    """The outlines run once round every dark module, and round no light one."""
    symbol = encode_symbol(payload, level=Level.Q)
    side = symbol.full_side_modules
    assert filled(symbol_path(symbol), side) == _framed(symbol, side)


def _framed(symbol: Symbol, side: int) -> list[list[int]]:
    """Put the symbol into its quiet zone, four modules from the top left."""
    framed = [[0] * side for _ in range(side)]
    for row, modules in enumerate(symbol.modules):
        for column, module in enumerate(modules):
            framed[row + 4][column + 4] = module
    return framed
