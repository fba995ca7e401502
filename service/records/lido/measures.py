"""Measures of an object: sizes as one text, the weight of the whole, the number of parts."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from service.records.cells.dimensions import parse_dimensions
from service.records.cells.weights import parse_weight
from service.records.lido.element import (
    Block,
    Element,
    find_all,
    first_text,
    read_attribute,
    read_term,
)
from service.records.rows.text import quote_text
from service.sentence import Sentence

# English, German, French, Dutch, Italian and Spanish; from memory.
_WEIGHT_WORDS = frozenset(("weight", "mass", "gewicht", "masse", "poids", "peso", "massa"))
_COUNT_WORDS = frozenset(
    (
        *("count", "number of parts", "number of pieces", "number of items", "quantity"),
        *("anzahl", "anzahl der teile", "stückzahl", "teile", "nombre d'éléments", "aantal"),
    )
)
_WHOLE_WORDS = frozenset(
    ("overall", "whole", "total", "object", "gesamt", "gesamtmaß", "objekt", "ensemble", "geheel")
)
_GUESS_STEMS = ("approx", "circa", "ca.", "about", "estimat", "geschätzt", "ungefähr", "environ")
_REQUIREMENT = "requirement"


@dataclass(slots=True)
class Measures:
    """What a record says of sizes, weights and numbers of parts, in the order in which it does.

    `weights_of_parts` weigh less than the object and stand for nothing else.
    """

    dimensions: list[str] = field(default_factory=list)
    weights: list[str] = field(default_factory=list)
    weights_of_parts: list[str] = field(default_factory=list)
    counts: list[str] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class _Entry:
    """One measure: what is measured, of which part, and how much."""

    kind: str
    extent: str
    value: str
    guessed: bool

    @property
    def text(self) -> str:
        """The measure as a person would write it."""
        return " ".join(filter(None, (self.extent, self.kind, self.value)))


def read_measures(blocks: Iterable[Block]) -> Measures:
    """Read the measures of the first block that has any."""
    for block in blocks:
        measures = Measures()
        steps = "objectIdentificationWrap/objectMeasurementsWrap/objectMeasurementsSet"
        for each in find_all(block.element, steps):
            # What a lender asks of a room is no measure of the object.
            if _REQUIREMENT not in read_attribute(each, "type").casefold():
                _read_set(each, block, measures)
        if measures != Measures():
            return measures
    return Measures()


def choose_weight(measures: Measures) -> tuple[str, Sentence | None]:
    """Give the weight of the whole, and what is wrong where it cannot be told."""
    known = {text: weight.weight_g for text in measures.weights if (weight := parse_weight(text))}
    if known and max(known.values()) > 1.02 * min(known.values()):
        said = ", ".join(quote_text(text) for text in known)
        return "", Sentence("{said} are different weights; the weight is unknown.", said=said)
    if measures.weights:
        return next(iter(known), measures.weights[0]), None
    if measures.weights_of_parts:
        said = quote_text("; ".join(measures.weights_of_parts))
        return "", Sentence("{said} is not the weight of the whole, which is unknown.", said=said)
    return "", None


def _read_set(each: Element, block: Block, measures: Measures) -> None:
    """Sort what one set says; a text for display wins where its sizes can be read."""
    shown = first_text(find_all(each, "displayObjectMeasurements"), block.language)
    entries = [
        entry
        for group in find_all(each, "objectMeasurements")
        for entry in _read_entries(group, block)
    ]
    pieces = [piece.strip() for piece in shown.split(";") if piece.strip()]
    weights = [piece for piece in pieces if _is_weight(piece)]
    # The weight as a person wrote it comes first, since the first one that can be read is kept.
    if not any(entry.extent for entry in entries):
        measures.weights += [_after_label(piece) for piece in weights]
    sizes = [entry.text for entry in entries if _sort(entry, measures)]
    display = "; ".join(piece for piece in pieces if piece not in weights)
    if display and not parse_dimensions(display).unread:
        measures.dimensions.append(display)
    elif sizes:
        measures.dimensions.append("; ".join(sizes))
    elif display and not entries:
        measures.dimensions.append(display)


def _sort(entry: _Entry, measures: Measures) -> bool:
    """Put a weight or a count where it belongs; tell whether the entry is a size."""
    kind = entry.kind.casefold()
    if kind in _COUNT_WORDS:
        measures.counts.append(entry.value)
        return False
    if kind in _WEIGHT_WORDS:
        text = f"ca. {entry.value}" if entry.guessed else entry.value
        if entry.extent and entry.extent.casefold() not in _WHOLE_WORDS:
            measures.weights_of_parts.append(f"{entry.extent} {text}")
        else:
            measures.weights.append(text)
        return False
    return True


def _read_entries(group: Element, block: Block) -> Iterator[_Entry]:
    extent = _term_of(group, "extentMeasurements", block)
    qualifier = _term_of(group, "qualifierMeasurements", block).casefold()
    for each in find_all(group, "measurementsSet"):
        kind = _term_of(each, "measurementType", block)
        value = first_text(find_all(each, "measurementValue"), block.language)
        unit = _term_of(each, "measurementUnit", block)
        if value:
            is_count = kind.casefold() in _COUNT_WORDS
            yield _Entry(
                kind,
                "" if extent.casefold() in _WHOLE_WORDS else extent,
                value if is_count else f"{value} {unit}".strip(),
                guessed=qualifier.startswith(_GUESS_STEMS),
            )


def _term_of(element: Element, name: str, block: Block) -> str:
    """Give a term in one language; 1.0 writes it as text, repeated for other languages."""
    found = find_all(element, name)
    return first_text(found, block.language) or next(
        (term for concept in found if (term := read_term(concept, block.language))), ""
    )


def _is_weight(text: str) -> bool:
    first = text.partition(":")[0].split(" ")[0].casefold()
    return first in _WEIGHT_WORDS or parse_weight(text) is not None


def _after_label(text: str) -> str:
    label, _, rest = text.replace(":", " ", 1).partition(" ")
    return rest.strip() if label.casefold() in _WEIGHT_WORDS else text
