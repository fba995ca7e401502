"""Gathers recorded hazards and cautions of a packing into what a card warns of."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from service.cards.parts import Handling, Pointer, Warn
from service.cards.words import write_date
from service.contents.packing import PackedObject, Packing
from service.contents.weights import Certainty, ContainerWeight, weigh_packing
from service.handling.cautions import drop_implied, find_caution
from service.handling.hazards import (
    DISCREET,
    STATE_WORDS,
    HazardEntry,
    find_hazard,
    head_hazard,
    word_hazard,
)
from service.handling.lifting import LiftAdvice, advise_lift
from service.printed import to_print
from service.records.record import ContainerRecord, Hazard, HazardState, Museum, WeightBasis

MARKS_BESIDE = 2
"""How many marks stand beside one object; the strip names what has no room there."""

STATE_ORDER = (HazardState.CONFIRMED, HazardState.PRESUMED, HazardState.UNCHECKED)
"""The best known comes first."""


_Words = tuple[str, str, str]
"""A hazard's name, its state in words, and its first precaution: what tells one from another."""


def is_discreet(packed: PackedObject) -> bool:
    """Tell whether neither title nor photo of the object may stand outside."""
    hazards = packed.record.hazards
    return packed.record.restricted or any(find_hazard(hazard.code).discreet for hazard in hazards)


def is_restricted(packed: PackedObject) -> bool:
    """Tell whether the object may be pictured nowhere, not even inside the house."""
    codes = {hazard.code for hazard in packed.record.hazards}
    return packed.record.restricted or not codes.isdisjoint({"human-remains", "restricted"})


def point_at(packed: PackedObject) -> Pointer:
    """Give the object's place and number as a warning names them."""
    return Pointer(packed.place.compartment, packed.record.object_number)


def warn_outside(packing: Packing, museum: Museum) -> Handling:
    """Gather all that must be known before the container is lifted or opened."""
    cautions = gather_cautions(packing.everything)
    said = {warn.heading for warn in cautions}
    return Handling(
        lift=advise_lift(weigh_packing(packing), packing.container, museum.lifting),
        hazards=gather_hazards(packing.everything),
        cautions=cautions,
        limits=tuple(words for words in _container_limits(packing.container) if words not in said),
    )


def advise_object(packed: PackedObject, museum: Museum) -> LiftAdvice:
    """Advise on an object lifted by itself: where its container stands says nothing of that."""
    alone, weight = ContainerRecord(packed.record.object_number), packed.record.weight
    if weight is None:
        nothing = ContainerWeight(0.0, Certainty.UNKNOWN, 1, 1, tare_known=True)
        return advise_lift(nothing, alone, museum.lifting)
    estimated = weight.basis is WeightBasis.ESTIMATED
    certainty = Certainty.ESTIMATED if estimated else Certainty.MEASURED
    known = ContainerWeight(weight.weight_g, certainty, 0, 1, tare_known=True)
    return advise_lift(known, alone, museum.lifting)


def gather_hazards(contents: Sequence[PackedObject]) -> tuple[Warn, ...]:
    """Merge equal hazards of several objects, most urgent first, confirmed before presumed."""
    found: dict[_Words, dict[Pointer, bool]] = {}
    entries: dict[_Words, tuple[HazardEntry, HazardState]] = {}
    for packed in contents:
        beside = marks_beside(packed)
        for hazard in packed.record.hazards:
            entry, state_words = outside_words(hazard)
            key = (entry.name, state_words, entry.instruction)
            entries.setdefault(key, (entry, hazard.state))
            found.setdefault(key, {})[point_at(packed)] = entry.mark in beside
    warns = [
        (STATE_ORDER.index(state), _word_hazard(entry, key, found[key]))
        for key, (entry, state) in entries.items()
    ]
    warns.sort(key=lambda item: (item[1].urgency, item[0]))
    return tuple(warn for _, warn in warns)


def _word_hazard(entry: HazardEntry, words: _Words, marked: dict[Pointer, bool]) -> Warn:
    name, state, instruction = words
    return Warn(
        mark=entry.mark,
        heading=head_hazard(name, state),
        instruction=instruction,
        pointers=tuple(marked),
        urgency=entry.urgency,
        unmarked=tuple(pointer for pointer, is_marked in marked.items() if not is_marked),
    )


def outside_words(hazard: Hazard) -> tuple[HazardEntry, str]:
    """Give the entry and state words for the outside: a discreet one says only to ask."""
    entry = find_hazard(hazard.code)
    if entry.discreet:
        # The museum's own words for it may say too much out here.
        return (entry if entry.name == "Restricted" else DISCREET), ""
    return word_hazard(hazard), STATE_WORDS[hazard.state]


def gather_cautions(contents: Iterable[PackedObject]) -> tuple[Warn, ...]:
    """Merge equal cautions; those that decide how the whole container is lifted come first.

    A caution names an object only where the marks beside that object have no room for it.
    """
    found: dict[str, list[Pointer]] = {}
    for packed in contents:
        beside = marks_beside(packed)
        for code in packed.record.cautions:
            pointers = found.setdefault(code, [])
            entry = find_caution(code)
            if not entry.whole_container and entry.mark not in beside:
                pointers.append(point_at(packed))
    codes = sorted(
        drop_implied(list(found)), key=lambda code: not find_caution(code).whole_container
    )
    return tuple(
        Warn(entry.mark, entry.name, "", tuple(found[code]), 3, tuple(found[code]))
        for code in codes
        for entry in (find_caution(code),)
    )


def marks_beside(packed: PackedObject) -> frozenset[str]:
    """Name the marks there is room for beside an object."""
    return frozenset(mark for mark, _ in mark_object(packed)[:MARKS_BESIDE])


def mark_object(packed: PackedObject) -> tuple[tuple[str, str], ...]:
    """Give the marks that stand beside one object, each once, hazards first.

    Cautions for the whole container stand on its strip and are not repeated here.
    """
    hazards = sorted(
        (outside_words(hazard) for hazard in packed.record.hazards),
        key=lambda item: item[0].urgency,
    )
    pairs = [(entry.mark, f"{entry.name} {state}".strip()) for entry, state in hazards]
    cautions = (find_caution(code) for code in packed.record.cautions)
    pairs += [(entry.mark, entry.name) for entry in cautions if not entry.whole_container]
    marks: dict[str, str] = {}
    for mark, words in pairs:
        marks.setdefault(mark, words)
    return tuple(marks.items())


def _container_limits(container: ContainerRecord) -> tuple[str, ...]:
    limits = []
    if container.stacking_limit is not None:
        limits.append(_write_stacking(container.stacking_limit))
    if container.heavy_end:
        limits.append(to_print("Heavy end: {heavy_end}", heavy_end=container.heavy_end))
    if container.temporary_until is not None:
        limits.append(
            to_print(
                "Temporary: repack by {temporary_until}",
                temporary_until=write_date(container.temporary_until),
            )
        )
    if container.handling_notes:
        limits.append(container.handling_notes)
    return tuple(limits)


def _write_stacking(limit: int) -> str:
    if limit == 0:
        return to_print("Nothing on top")
    return (
        to_print("At most 1 box on top")
        if limit == 1
        else to_print("At most {limit} boxes on top", limit=limit)
    )
