"""What a plate's content says: its lines of glyphs, its drawn objects, its symbols.

A reader of our own for the few operators plates are made of (ISO 32000-1, 8 and 9). It is strict:
whatever it does not know (a clip, a transparency, a way to hide text) is told, and nothing is
passed over.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from service.geometry import Rect
from service.units import mm_from_points

# Every repetition is possessive: what is read once is never read again in another way.
_NUMBER = rb"([+-]?+[\d.]++)\s++"
_PLACED = rb"q\s++" + _NUMBER + rb"0\s++0\s++" + 3 * _NUMBER + rb"cm\s*+"
_OPERANDS = rb"(?:[+-]?+[\d.]++\s++|\[[\d.\s]*+\]\s*+)*+"
_PAINT = rb"Q|cm|w|J|j|M|d|re|m|l|c|v|y|h|S|s|f\*?+|F|n|g|G|rg|RG"
_ITEMS = (
    # A line of glyphs: where it begins, and what shows it.
    rb"BT\s++" + 2 * _NUMBER + rb"Td\s*+([^E]*+(?:E(?!T\b)[^E]*+)*+)ET\b",
    # A picture or mark in its place.
    _PLACED + rb"/(\S++)\s++Do\s++Q\b",
    # A symbol in its place, as a mask of one bit a module.
    _PLACED + rb"BI\s[^\[\]>]*+\[1 0\]\s[^>\[]*?ID\s++[0-9A-Fa-f\s]++>\s*+EI\s++Q\b",
    # Paths, lines and colours.
    rb"(?:" + _OPERANDS + rb"(?:" + _PAINT + rb")(?=\s|\Z)\s*+)++",
    rb"q\b",
)
_ITEM = re.compile(rb"(?:" + rb"|".join(_ITEMS) + rb")\s*+")
_RUN, _NAME = 3, 8


@dataclass(frozen=True, slots=True)
class Run:
    """The glyphs of one line: where its baseline begins, in points from the bottom left."""

    x_pt: float
    y_pt: float
    operators: bytes


@dataclass(frozen=True, slots=True)
class Drawn:
    """What fills a rectangle of the face: `P0` a picture, `Mfragile` a mark, "" a symbol."""

    name: str
    rect: Rect


@dataclass(frozen=True, slots=True)
class Content:
    """Everything a plate shows but its paths, in the order of drawing.

    `unread` is the beginning of what could not be understood, "" where all was.
    """

    runs: tuple[Run, ...]
    drawn: tuple[Drawn, ...]
    unread: str


def read_content(content: bytes, *, height_mm: float) -> Content:
    """Read the inflated content of a plate that is `height_mm` high."""
    content = content.strip()
    runs: list[Run] = []
    drawn: list[Drawn] = []
    end = 0
    for item in _items(content):
        end = item.end()
        last = item.lastindex
        if last == _RUN:
            runs.append(Run(float(item[1]), float(item[2]), item[3]))
        elif last is not None:
            name = item[_NAME].decode("latin-1") if last == _NAME else ""
            start = _RUN + 1 if last == _NAME else _NAME + 1
            drawn.append(Drawn(name, _rect(item.groups()[start - 1 : start + 3], height_mm)))
    return Content(tuple(runs), tuple(drawn), content[end : end + 40].decode("latin-1"))


def _items(content: bytes) -> Iterator[re.Match[bytes]]:
    """Give one item after another, as far as each follows the last."""
    end = 0
    while end < len(content) and (item := _ITEM.match(content, end)):
        yield item
        end = item.end()


def _rect(numbers: tuple[bytes, ...], height_mm: float) -> Rect:
    width, height, left, bottom = (mm_from_points(float(number)) for number in numbers)
    return Rect(left, height_mm - bottom - height, width, height)
