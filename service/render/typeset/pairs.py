"""Plain lines put together pair by pair, without the shaper of paragraphs.

Operators count in thousandths of the em and nothing is hinted, so a line looks the same in every
size. The main face has a glyph for each sign and kerns in pairs, and knows no ligature and no
context: how far a sign goes depends on it and on the next one alone. Each pair is shaped once.
Lines of plain Latin text are most of what a card says; all others are left to the shaper.
"""

from __future__ import annotations

import unicodedata
from functools import lru_cache
from typing import NamedTuple

from service.render.typeset.faces import Face
from service.render.typeset.shaped import NOTDEF
from service.units import mm_from_points

_UNITS_PER_EM = 1000
_LEAST_SHIFT = 0.5
"""Shifts are whole thousandths of the em; less than half of one waits for the next glyph."""
_MOST_PAIRS = 100_000
_LAST_LATIN = 0x024F
_LETTERS = frozenset({"Lu", "Ll"})
_PLAIN_KINDS = _LETTERS | {"Nd", "No", "Zs", "Po", "Pd", "Ps", "Pe", "Pi", "Pf", "Sm", "Sc", "So"}
_BLANK = " "


class _Step(NamedTuple):
    """A sign before another one, or at the end of a line; lengths in thousandths of the em.

    `lead` is how far its operator leads beyond where the shaper stands, `advance` how far the
    shaper goes.
    """

    code: str
    lead: float
    advance: float
    number: int


class PlainLine(NamedTuple):
    """A line put together: the array of its glyphs, its advance, and what the glyphs say."""

    array: str
    advance: float
    glyphs: dict[int, str]


class Pairs(dict[str, _Step]):
    """The pairs of signs of one face; a sign alone ends a line."""

    def __init__(self, face: Face) -> None:
        """Begin without a pair."""
        super().__init__()
        self.face = face

    def __missing__(self, pair: str) -> _Step:
        """Shape a pair.

        Raises:
            KeyError: When its signs do not stand for themselves in this face.
        """
        glyphs = self.face.shape(pair)
        (number, width, *offsets) = glyphs[0]
        if len(glyphs) != len(pair) or number == NOTDEF or any(offsets):
            raise KeyError(pair)
        own, code = self.face.codes[number]
        if len(self) >= _MOST_PAIRS:
            self.clear()
        step = self[pair] = _Step(code, own - width, width, number)
        return step


def put_together(text: str, pairs: Pairs) -> PlainLine | None:
    """Put a line together; None where it must be shaped as a whole."""
    if not text or not is_plain(text):
        return None
    try:
        steps = [pairs[text[place : place + 2]] for place in range(len(text))]
    except KeyError:
        return None
    lead = advance = 0.0
    array: list[str] = []
    for step in steps:
        if not -_LEAST_SHIFT <= lead <= _LEAST_SHIFT:
            shift = round(lead)
            array.append(f">{shift}<")
            lead -= shift
        array.append(step.code)
        lead += step.lead
        advance += step.advance
    numbers = [step.number for step in steps]
    return PlainLine("".join(array), advance, dict(zip(numbers, text, strict=True)))


def advance_mm(thousandths: float, size_pt: float) -> float:
    """Give an advance at a type size."""
    return mm_from_points(thousandths * size_pt / _UNITS_PER_EM)


def is_plain(text: str) -> bool:
    """Tell whether a text has only Latin letters, figures and signs that stand for themselves.

    Blanks other than the usual one are left out: their glyph is that of the usual one.
    """
    return all(map(_is_plain_sign, text))


@lru_cache(4096)
def _is_plain_sign(sign: str) -> bool:
    kind = unicodedata.category(sign)
    if kind == "Zs":
        return sign == _BLANK
    is_known_script = ord(sign) <= _LAST_LATIN or kind not in _LETTERS
    return kind in _PLAIN_KINDS and is_known_script
