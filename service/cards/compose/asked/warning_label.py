"""The warning labels: one for each hazard of a container, for its outside, its crate or its shelf.

All labels of a container are one set and one card: it is wrong as soon as one of them is, and what
is missing from "1 of 3" is noticed. A hazard that may not be announced says only whom to ask.
"""

from __future__ import annotations

from collections import defaultdict
from datetime import date

from service.cards.card import WarningLabel
from service.cards.compose.head import compose_head
from service.cards.compose.objects import locate_objects, name_outside
from service.cards.compose.warn import STATE_ORDER, outside_words
from service.cards.fingerprint import seal_card
from service.cards.parts import HazardGroup, WarnedObject
from service.cards.words import join_words, write_date
from service.contents.packing import PackedObject, Packing
from service.handling.hazards import DISCREET, STATE_WORDS, HazardEntry
from service.printed import to_print
from service.records.record import Hazard, HazardState, Museum

NOT_DATED = to_print("check not dated")

_Found = tuple[HazardState, WarnedObject]


def compose_warning_label(packing: Packing, museum: Museum) -> WarningLabel:
    """Word the warning labels of a packing, the most urgent hazard first."""
    entries: dict[str, HazardEntry] = {}
    found: dict[str, list[_Found]] = defaultdict(list)
    for packed, place in locate_objects(packing):
        for hazard in packed.record.hazards:
            entry, _ = outside_words(hazard)
            entries.setdefault(entry.name, entry)
            found[entry.name].append((hazard.state, _warn_of(packed, place, hazard)))
    head = compose_head(packing, museum)
    role = packing.container.questions.role or museum.questions.role
    ranked = sorted(entries.values(), key=lambda entry: _urgency(entry, found[entry.name]))
    groups = tuple(_group(entry, found[entry.name], role) for entry in ranked)
    return seal_card(WarningLabel(head, groups), dated=False)


def has_hazards(packing: Packing) -> bool:
    """Tell whether there is anything to warn of."""
    return any(packed.record.hazards for packed in packing.everything)


def _urgency(entry: HazardEntry, found: list[_Found]) -> tuple[int, int]:
    return entry.urgency, min(STATE_ORDER.index(state) for state, _ in found)


def _group(entry: HazardEntry, found: list[_Found], role: str) -> HazardGroup:
    if entry.discreet or entry is DISCREET:
        whom = role or to_print("first")
        words = (
            to_print("Ask {whom}", whom=whom)
            if entry is DISCREET
            else to_print("Do not open: ask {whom}", whom=whom)
        )
        return HazardGroup(entry.mark, entry.name, words)
    checks = list(dict.fromkeys(warned.checked for _, warned in found))
    ordered = sorted(
        found, key=lambda one: (STATE_ORDER.index(one[0]), checks.index(one[1].checked))
    )
    objects = tuple(dict.fromkeys(warned for _, warned in ordered))
    ask = "" if entry.ask == DISCREET.ask else entry.ask
    return HazardGroup(
        entry.mark, entry.name, entry.instruction, ask, objects, protection=entry.protection
    )


def _warn_of(packed: PackedObject, place: str, hazard: Hazard) -> WarnedObject:
    return WarnedObject(
        place=place,
        object_number=packed.record.object_number,
        title=name_outside(packed),
        state=STATE_WORDS[hazard.state],
        checked=_write_check(hazard),
    )


def _write_check(hazard: Hazard) -> str:
    """Say when and how the hazard was looked into, and when to look again."""
    day = (
        to_print("checked {checked_on}", checked_on=_on_one_line(hazard.checked_on))
        if hazard.checked_on
        else ""
    )
    if not day and hazard.state is not HazardState.UNCHECKED:
        day = NOT_DATED
    how = join_words((day, hazard.method, hazard.checked_by), between=", ")
    review = (
        to_print("review {review_on}", review_on=_on_one_line(hazard.review_on))
        if hazard.review_on
        else ""
    )
    return join_words((how, review))


def _on_one_line(day: date) -> str:
    return write_date(day).replace(" ", "\N{NO-BREAK SPACE}")
