"""Checks whether objects are larger than the inside of their container."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from service.contents.packing import PackedObject, Packing
from service.findings import Finding
from service.handling.materials import is_textile
from service.handling.packing.report import Known, report
from service.handling.packing.rules import TOO_LARGE
from service.handling.phrases import find_phrase
from service.records.measures import Measure
from service.sentence import Sentence

_SIDES = 3
_AS_IT_NEED_NOT_LIE = (
    "flat", "open", "opened", "unrolled", "unfolded", "extended", "image", "sheet", "line", "cord",
    "rope", "chain", "strap", "cable", "circumference",
)  # fmt: skip
"""Words before a measure that an object need not have in its container."""


def check_size(packing: Packing, _known: Known) -> Iterator[Finding]:
    """Report objects that are larger than the container inside, whichever way they are turned.

    What is of cloth bends; more than three measures are those of several parts, of which only the
    longest counts.
    """
    inner_mm = _sides_mm(packing.container.inner_dimensions)
    for packed in packing.contents if inner_mm else ():
        measures = _measures_here(packed)
        if is_textile(packed.record) or not measures:
            continue
        sides_mm = _sides_mm(measures)
        pairs = zip(sides_mm, inner_mm, strict=False)
        wrong = next(((side_mm, room_mm) for side_mm, room_mm in pairs if side_mm > room_mm), None)
        if wrong is not None:
            number = packed.record.object_number
            what = Sentence(
                "{number} measures {side_mm:g} mm where there are {room_mm:g} mm inside.",
                number=number,
                side_mm=wrong[0],
                room_mm=wrong[1],
            )
            yield report(TOO_LARGE, packing, what, packed=packed)


def _measures_here(packed: PackedObject) -> list[Measure]:
    """Give the measures as it lies, without those of parts that lie elsewhere."""
    here, marks = packed.place.parts, {part.mark for part in packed.record.parts}
    elsewhere = marks.difference(here) if here else set[str]()
    return [
        measure
        for measure in packed.record.dimensions
        if not find_phrase(measure.label, (*_AS_IT_NEED_NOT_LIE, *elsewhere))
    ]


def _sides_mm(measures: Sequence[Measure]) -> list[float]:
    """Give up to three sides, the longest first; a diameter is two of them."""
    sides_mm = [measure.length_mm for measure in measures]
    if len(sides_mm) > _SIDES:
        return [max(sides_mm)]
    sides_mm += [one.length_mm for one in measures if find_phrase(one.label, ("diameter",))]
    return sorted(sides_mm, reverse=True)[:_SIDES]
