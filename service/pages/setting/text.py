"""Sets texts into blocks: broken by the ruler, shortened only where that is allowed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from service.geometry import Rect
from service.pages.page import TextBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.script import language_of

ELLIPSIS = "…"
_BREAK_AFTER = ".-/ "
"""The signs after which a number may go on in the next line (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a text begins, how wide its lines may be and how many it may have (0: any)."""

    x_mm: float
    y_mm: float
    width_mm: float
    max_lines: int = 0


def set_text(ruler: Ruler, text: str, style: TextStyle, spot: Spot, purpose: str) -> TextBlock:
    """Set running text; past `max_lines` it is shortened with an ellipsis.

    The language is that of the style, else as far as the letters tell.
    """
    style = replace(style, language=style.language or language_of(text))
    broken = ruler.break_text(text, style, width_mm=spot.width_mm)
    lines = broken.lines
    if spot.max_lines and len(lines) > spot.max_lines:
        lines = _shorten(ruler, text, style, spot, lines)
    block = _make_block(lines, style, spot, purpose, text)
    return replace(block, direction=broken.direction, language=style.language)


def set_number(ruler: Ruler, number: str, style: TextStyle, spot: Spot, purpose: str) -> TextBlock:
    """Set a number whole: it breaks after `. - /` and blanks, and is never shortened."""
    lines = break_number(ruler, number, style, width_mm=spot.width_mm)
    return _make_block(lines, style, spot, purpose, number)


def break_number(
    ruler: Ruler, number: str, style: TextStyle, *, width_mm: float
) -> tuple[str, ...]:
    """Break a number into lines; only a piece wider than a whole line is broken inside."""
    lines: list[str] = []
    line = ""
    for piece in _narrow_pieces(ruler, number, style, width_mm):
        if line and ruler.width_mm((line + piece).strip(), style) > width_mm:
            lines.append(line.strip())
            line = piece
        else:
            line += piece
    return (*lines, line.strip())


def _narrow_pieces(ruler: Ruler, number: str, style: TextStyle, width_mm: float) -> Iterator[str]:
    """Give the pieces of a number, those wider than the line as what fits on each line."""
    for piece in _pieces(number):
        rest = piece
        while len(rest) > 1 and ruler.width_mm(rest.strip(), style) > width_mm:
            fitting = range(len(rest) - 1, 0, -1)
            cut = next((at for at in fitting if ruler.width_mm(rest[:at], style) <= width_mm), 1)
            yield rest[:cut]
            rest = rest[cut:]
        yield rest


def longest_piece_mm(ruler: Ruler, numbers: Sequence[str], style: TextStyle) -> float:
    """Give the width no number can be broken below."""
    pieces = {piece.strip() for number in numbers for piece in _pieces(number)}
    return max((ruler.width_mm(piece, style) for piece in pieces), default=0.0)


def _pieces(number: str) -> list[str]:
    pieces, start = [], 0
    for index, sign in enumerate(number):
        if sign in _BREAK_AFTER and index > start:
            pieces.append(number[start : index + 1])
            start = index + 1
    return [*pieces, number[start:]] if start < len(number) or not pieces else pieces


def _shorten(
    ruler: Ruler, text: str, style: TextStyle, spot: Spot, lines: tuple[str, ...]
) -> tuple[str, ...]:
    """Keep the first lines whole and cut the last one so that an ellipsis still fits."""
    kept = lines[: spot.max_lines - 1]
    start = 0
    for line in kept:
        start = text.index(line, start) + len(line)
    rest = text[start:].strip()
    low, high = 0, min(len(rest), len(lines[spot.max_lines - 1]) + 2)
    while low < high:
        middle = (low + high + 1) // 2
        wide = ruler.width_mm(rest[:middle].rstrip() + ELLIPSIS, style) > spot.width_mm
        low, high = (low, middle - 1) if wide else (middle, high)
    return (*kept, rest[:low].rstrip(" ,;:-\N{EN DASH}") + ELLIPSIS)


def _make_block(
    lines: tuple[str, ...], style: TextStyle, spot: Spot, purpose: str, whole: str
) -> TextBlock:
    height_mm = style.leading_mm * len(lines)
    rect = Rect(spot.x_mm, spot.y_mm, spot.width_mm, height_mm)
    return TextBlock(purpose, rect, lines, style, whole)
