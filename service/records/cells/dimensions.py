"""Dimensions as people write them, with their labels, named parts and units."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from service.records.cells.dimension_words import (
    AXIS_OF,
    UNIT_OF,
    Token,
    TokenKind,
    cut_into_tokens,
)
from service.records.cells.numbers import parse_number
from service.records.measures import Measure
from service.records.rows.cell import Cell
from service.records.rows.text import quote_text
from service.sentence import Sentence
from service.units import mm_from_length

LENGTH_LIMIT_MM = 1_000_000.0
"""Nothing kept in a store is a kilometre long; a larger number is a slip."""

TEXT_LIMIT = 2_000
"""Characters of a dimensions text that are read: longer ones are not dimensions."""

_AXIS_IN_BRACKETS = re.compile(r"[(\[]([a-zøØ⌀.\s\u00d7x*]{1,40})[)\]]", re.IGNORECASE)
_BRACKETS = re.compile(r"\([^()]*\)|\[[^\[\]]*\]")
_FEET_AND_INCHES = re.compile(
    r"([0-9]+)\s*(?:ft\.?|feet|foot|['\u2019\u2032])\s*([0-9]+(?:[.][0-9]+)?)\s*(?:ins?\b\.?|inch(?:es)?|[\"”″])",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Quantity:
    """One number of a dimensions text with its label and, where written, its unit."""

    label: str
    value: float
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Dimensions:
    """The measures understood, in the order written, and the pieces of text that were not."""

    measures: tuple[Measure, ...] = ()
    unread: tuple[str, ...] = ()


def parse_dimensions(text: str) -> Dimensions:
    """Read a dimensions text, measures of zero and below included.

    Parts are divided by `;`, and within a part by a comma and a blank. A unit written once holds
    for the numbers before it that have none, then for those after it. What stands in brackets is
    the same measure in another unit, or a remark, and is not read; where nothing else stands, that
    was not understood.
    """
    quantities: list[Quantity] = []
    unread: list[str] = []
    for name, segment in _segments(_without_brackets(text[:TEXT_LIMIT])):
        found = _read_segment(segment, name=name)
        quantities.extend(found)
        if not found:
            unread.append(segment)
    if not quantities and not unread and text.strip(" ;,"):
        unread.append(text.strip())
    quantities = _fill_units(quantities)
    unread.extend(f"{item.label} {item.value:g}".strip() for item in quantities if not item.unit)
    measures = (_measure(item) for item in quantities if item.unit)
    return Dimensions(tuple(measures), tuple(unread))


def read_dimensions(cell: Cell) -> tuple[Measure, ...]:
    """Read the measures of a cell; pieces not understood and impossible measures are noted."""
    if not cell.value:
        return ()
    dimensions = parse_dimensions(cell.value)
    possible = tuple(item for item in dimensions.measures if is_possible(item))
    if dimensions.unread:
        unread = quote_text("; ".join(dimensions.unread))
        cell.note(
            "unreadable-dimensions",
            Sentence(
                "{unread} was not understood; {possible}.", unread=unread, possible=_say(possible)
            ),
        )
    for item in dimensions.measures:
        if not is_possible(item):
            label = f"A {item.label}" if item.label else "A measure"
            cell.note(
                "impossible-measure",
                Sentence(
                    "{label} of {length_mm:g} mm cannot be.", label=label, length_mm=item.length_mm
                ),
            )
    return possible


def is_possible(measure: Measure) -> bool:
    """Tell whether a measure is more than nothing and less than a slip of the pen."""
    return 0 < measure.length_mm <= LENGTH_LIMIT_MM


def _say(measures: Sequence[Measure]) -> str:
    if not measures:
        return "no measure was read"
    read = ", ".join(f"{item.label} {item.length_mm:g} mm".strip() for item in measures)
    return f"read were: {read}"


def _without_brackets(text: str) -> str:
    text = _FEET_AND_INCHES.sub(_in_inches, text)
    return _BRACKETS.sub(" ", _AXIS_IN_BRACKETS.sub(_keep_axes, text))


def _in_inches(match: re.Match[str]) -> str:
    return f"{12 * int(match[1]) + float(match[2]):g} in"


def _keep_axes(match: re.Match[str]) -> str:
    kinds = {token.kind for token in cut_into_tokens(match[1])}
    return f" {match[1]} " if kinds <= {TokenKind.AXIS, TokenKind.CROSS} else " "


def _segments(text: str) -> Iterator[tuple[str, str]]:
    """Give each piece with the name of the part it belongs to."""
    for part in text.split(";"):
        name = ""
        for segment in re.split(r",\s|\sand\s", part):
            if segment.strip():
                name = _part_name(segment) or name
                yield name, segment.strip()


def _part_name(segment: str) -> str:
    words = []
    for token in cut_into_tokens(segment):
        if token.kind is TokenKind.NUMBER:
            break
        if token.kind is TokenKind.WORD:
            words.append(token.text)
    return " ".join(words)


def _read_segment(segment: str, *, name: str) -> list[Quantity]:
    """Read one piece of a part; an empty list means that it was not understood."""
    tokens = list(cut_into_tokens(segment))
    first = next((i for i, token in enumerate(tokens) if token.kind is TokenKind.NUMBER), None)
    if first is None or any(_is_foreign(token) for token in tokens[first:]):
        return []
    if any(token.kind is TokenKind.SIGN for token in tokens[:first]):
        return []
    quantities = _collect(tokens)
    labelled = _label(quantities, tokens)
    if not name:
        return labelled
    return [replace(item, label=f"{name} {item.label}".strip()) for item in labelled]


def _is_foreign(token: Token) -> bool:
    return token.kind in {TokenKind.WORD, TokenKind.SIGN, TokenKind.COLON}


def _collect(tokens: Sequence[Token]) -> list[Quantity]:
    """Pair numbers with the units that follow; an empty list means that one was not understood."""
    quantities: list[Quantity] = []
    for before, token in zip((None, *tokens), tokens, strict=False):
        if token.kind is TokenKind.NUMBER:
            value = parse_number(token.text.lstrip("-\u2212"))
            follows_number = before is not None and before.kind is TokenKind.NUMBER
            if value is None or follows_number:
                return []
            quantities.append(Quantity("", value if token.text[0] not in "-\u2212" else -value))
        elif token.kind is TokenKind.UNIT and quantities:
            if quantities[-1].unit:
                return []
            quantities[-1] = replace(quantities[-1], unit=UNIT_OF[token.text.lower()])
    return quantities


def _label(quantities: list[Quantity], tokens: Sequence[Token]) -> list[Quantity]:
    """Give numbers their labels: one each in order, else to the number a label stands beside."""
    axes = [AXIS_OF[token.text.lower()] for token in tokens if token.kind is TokenKind.AXIS]
    if len(axes) == len(quantities):
        return [replace(item, label=axis) for item, axis in zip(quantities, axes, strict=True)]
    labelled = list(quantities)
    labels_lead = _labels_lead(tokens)
    seen = 0
    for token in tokens:
        if token.kind is TokenKind.NUMBER:
            seen += 1
        elif token.kind is TokenKind.AXIS:
            index = seen if labels_lead else seen - 1
            if index < len(labelled):
                labelled[index] = replace(labelled[index], label=AXIS_OF[token.text.lower()])
    return labelled


def _labels_lead(tokens: Sequence[Token]) -> bool:
    either = {TokenKind.AXIS, TokenKind.NUMBER}
    return next((token.kind is TokenKind.AXIS for token in tokens if token.kind in either), True)


def _fill_units(quantities: Sequence[Quantity]) -> list[Quantity]:
    backwards = _carry_unit(reversed(quantities))
    return _carry_unit(reversed(backwards))


def _carry_unit(quantities: Iterator[Quantity]) -> list[Quantity]:
    unit = ""
    carried = []
    for item in quantities:
        unit = item.unit or unit
        carried.append(item if item.unit == unit else replace(item, unit=unit))
    return carried


def _measure(item: Quantity) -> Measure:
    return Measure(item.label, mm_from_length(item.value, unit=item.unit))
