"""The words and signs of dimensions, and the cutting of a text into them."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from service.records.cells.numbers import NUMBER

_AXES = {
    "height": "h ht height high tall",
    "width": "w wd width wide b br breadth",
    "depth": "d dp depth deep",
    "length": "l lg length long",
    "diameter": "diameter diam dia ø ⌀ o/d",
    "thickness": "th thk thickness thick",
    "circumference": "circumference circ",
}
AXIS_OF = {word: axis for axis, words in _AXES.items() for word in words.split()}

_UNITS = {
    "mm": "mm millimetre millimetres millimeter millimeters",
    "cm": "cm cms centimetre centimetres centimeter centimeters",
    "m": "m metre metres meter meters",
    "in": "in ins inch inches \" ” ″ ''",
    "ft": "ft foot feet ' \u2019 \u2032",
}
UNIT_OF = {word: unit for unit, words in _UNITS.items() for word in words.split()}


class TokenKind(StrEnum):
    """What a piece of a dimensions text is."""

    NUMBER = "number"
    UNIT = "unit"
    AXIS = "axis"
    CROSS = "cross"
    COLON = "colon"
    WORD = "word"
    SIGN = "sign"


@dataclass(frozen=True, slots=True)
class Token:
    """One piece of a dimensions text, as written."""

    kind: TokenKind
    text: str


def _any_of(words: dict[str, str]) -> str:
    alternatives = "|".join(re.escape(word) for word in sorted(words, key=len, reverse=True))
    # A letter may not follow, but the cross of "12cmx8cm" may.
    return rf"(?:{alternatives})(?![^\W\d_](?<![xX]))"


_TOKEN = re.compile(
    r"(?P<skip>[\s,.=]+|(?:ca?\.|ca|circa|about|approx(?:imately)?|overall)(?![^\W\d_])|[~≈±])"
    r"|(?P<cross>(?:[x\u00d7✕*])(?![^\W\d_](?<![hwdlbtøHWDLBTØ⌀]))|by(?![^\W\d_]))"
    rf"|(?P<number>[-\u2212]?{NUMBER})"
    rf"|(?P<unit>{_any_of(UNIT_OF)})"
    rf"|(?P<axis>{_any_of(AXIS_OF)})"
    r"|(?P<colon>:)"
    r"|(?P<word>[^\W\d_][\w\u2019'/-]*)"
    r"|(?P<sign>.)",
    re.IGNORECASE | re.DOTALL,
)


def cut_into_tokens(text: str) -> Iterator[Token]:
    """Cut a text into tokens from left to right; blanks, commas and words like "about" go."""
    for match in _TOKEN.finditer(text):
        kind = match.lastgroup
        if kind is not None and kind != "skip":
            yield Token(TokenKind(kind), match[0])
