"""Weights as people write them: `1.2 kg`, `ca. 300 g`, `2 lb 3 oz`."""

from __future__ import annotations

import re

from service.records.cells.numbers import NUMBER, parse_number
from service.records.record import Weight, WeightBasis
from service.records.rows.cell import Cell
from service.records.rows.text import quote_text
from service.sentence import Sentence
from service.units import grams_from_mass

_UNITS = {
    "mg": "mg",
    "g": "g gm gms gr gram grams gramme grammes",
    "kg": "kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes",
    "oz": "oz ozs ounce ounces",
    "lb": "lb lbs pound pounds",
}
_UNIT_OF = {word: unit for unit, words in _UNITS.items() for word in words.split()}
_UNIT = "(?:" + "|".join(sorted(_UNIT_OF, key=len, reverse=True)) + r")(?![a-z])\.?"
_GUESS = re.compile(
    r"\b(?:ca?\.|ca|circa|about|approx(?:imately)?\.?|around|roughly|est(?:imated)?\.?)(?![a-z])"
    r"|[~≈±]",
    re.IGNORECASE,
)
_BRACKETS = re.compile(r"\([^()]*\)|\[[^\[\]]*\]")
_WEIGHT = re.compile(
    rf"([-\u2212]?)({NUMBER})\s*({_UNIT})(?:[\s,]*({NUMBER})\s*({_UNIT}))?", re.IGNORECASE
)
_BARE_NUMBER = re.compile(NUMBER)


def parse_weight(text: str) -> Weight | None:
    """Give the weight a text states, 0 and below included; None where none was understood.

    A word such as "about" makes the weight an estimate. What stands in brackets is the same weight
    in another unit and is not read.
    """
    guessed = _GUESS.search(text) is not None
    match = _WEIGHT.fullmatch(_GUESS.sub("", _BRACKETS.sub("", text)).strip(" ,:;."))
    if match is None:
        return None
    first, second = _grams(match[2], match[3]), _grams(match[4], match[5])
    if first is None or second is None:
        return None
    weight_g = -(first + second) if match[1] else first + second
    return Weight(weight_g, WeightBasis.ESTIMATED if guessed else WeightBasis.MEASURED)


def read_weight(cell: Cell) -> Weight | None:
    """Read a weight; None where the cell is empty or was not understood."""
    text = cell.value
    if not text:
        return None
    weight = parse_weight(text)
    if weight is None:
        bare = _BARE_NUMBER.fullmatch(text) is not None
        reason = Sentence("has no unit") if bare else Sentence("was not understood as a weight")
        cell.note(
            "unreadable-weight",
            Sentence(
                "{text} {reason}; the weight is unknown.", text=quote_text(text), reason=reason
            ),
        )
    elif weight.weight_g <= 0:
        cell.note(
            "impossible-measure", Sentence("{text} cannot be a weight.", text=quote_text(text))
        )
        return None
    return weight


def _grams(number: str | None, unit: str | None) -> float | None:
    if number is None or unit is None:
        return 0.0
    value = parse_number(number)
    return (
        None if value is None else grams_from_mass(value, unit=_UNIT_OF[unit.lower().rstrip(".")])
    )
