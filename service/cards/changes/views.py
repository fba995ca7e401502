"""What cards of every kind have in common, whichever field holds it: warnings, objects, advice."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from service.cards.card import (
    Card,
    ContentsList,
    CoverCard,
    EndLabel,
    LidCard,
    ListEntry,
    ObjectTag,
    ShoulderTag,
    SideCard,
    WarningLabel,
)
from service.cards.changes.facts import DISCREET_NAMES, Fact, hazard_in, read_heading
from service.cards.compose.objects import NOT_SHOWN
from service.cards.parts import CardObject, Handling, HazardGroup, Pointer, Warn
from service.handling.cautions import CAUTIONS
from service.handling.lifting import NO_ADVICE, LiftAdvice

_CAUTION_NAMES = frozenset(entry.name for entry in CAUTIONS.values())
_LISTED_LAYER = re.compile(r"(layer \d+) ?(.*)", re.DOTALL)


@dataclass(frozen=True, slots=True)
class Item:
    """An object of a card where it lies; `layer` is empty where the card names none."""

    layer: str
    place: str
    content: CardObject | ListEntry

    @property
    def object_number(self) -> str:
        """The number of the object."""
        return self.content.object_number


def lift_of(card: Card) -> LiftAdvice:
    """Give what a card says about lifting; some say nothing."""
    if isinstance(card, LidCard | SideCard | CoverCard):
        return card.handling.lift
    if isinstance(card, EndLabel | ContentsList | ObjectTag):
        return card.lift
    return NO_ADVICE


def limits_of(card: Card) -> tuple[str, ...]:
    """Give the limits of the container that a card prints."""
    return card.handling.limits if isinstance(card, LidCard | SideCard | CoverCard) else ()


def warns_of(card: Card) -> tuple[tuple[bool, Warn], ...]:
    """Give every warning in its order, and whether it is one of a hazard."""
    if isinstance(card, EndLabel):
        return tuple((bool(warn.instruction), warn) for warn in card.marks)
    if isinstance(card, WarningLabel):
        return tuple((True, warn) for group in card.groups for warn in _group_warns(group))
    hazards, cautions = _hazards_and_cautions(card)
    return (*((True, warn) for warn in hazards), *((False, warn) for warn in cautions))


def _hazards_and_cautions(card: Card) -> tuple[tuple[Warn, ...], tuple[Warn, ...]]:
    if isinstance(card, LidCard | SideCard | CoverCard):
        handling: Handling = card.handling
        return handling.hazards, handling.cautions
    if isinstance(card, ObjectTag):
        return card.hazards, card.cautions
    return (card.hazards if isinstance(card, ShoulderTag) else ()), ()


def _group_warns(group: HazardGroup) -> Iterable[Warn]:
    """Give the warnings that the labels of one hazard are, one for each state."""
    states: dict[str, list[Pointer]] = {}
    for item in group.objects:
        states.setdefault(item.state, []).append(Pointer(item.place, item.object_number))
    for state, pointers in (states or {"": []}).items():
        heading = f"{group.name} {state}".strip()
        yield Warn(group.mark, heading, group.instruction, tuple(pointers))


def items_of(card: Card) -> tuple[Item, ...]:
    """Give every object that stands on a card for being in the container."""
    if isinstance(card, LidCard | SideCard):
        return tuple(
            Item(_name_layer(layer.heading), item.place, item)
            for layer in card.layers
            for item in layer.objects
        )
    if isinstance(card, CoverCard):
        return tuple(Item("", item.place, item) for item in (card.main, *card.others))
    if isinstance(card, ShoulderTag):
        return tuple(Item("", item.place, item) for item in card.objects)
    if isinstance(card, ContentsList):
        return tuple(_list_item(entry) for entry in card.entries)
    return ()


def layers_of(card: Card) -> tuple[str, ...]:
    """Give the layers a card names, each once, in full."""
    if isinstance(card, LidCard | SideCard):
        return tuple(layer.heading for layer in card.layers)
    return tuple(dict.fromkeys(item.layer for item in items_of(card)))


def discreet_numbers(card: Card) -> frozenset[str]:
    """Name the objects of which neither title nor photo may stand outside."""
    listed = {fact.object_number for fact in hazards_of(card) if fact.name in DISCREET_NAMES}
    hidden = {
        item.object_number for item in items_of(card) if item.content.photo_words == NOT_SHOWN
    }
    return frozenset(listed | hidden) - {""}


def hazards_of(card: Card) -> tuple[Fact, ...]:
    """Give every hazard a card names, object by object."""
    if isinstance(card, ContentsList):
        facts = [
            hazard_in(sentence, entry.object_number)
            for entry in card.entries
            for sentence in entry.hazards
        ]
    else:
        warns = (warn for is_hazard, warn in warns_of(card) if is_hazard)
        facts = [fact for warn in warns for fact in _read_warn(warn)]
    return tuple(dict.fromkeys(facts))


def cautions_of(card: Card) -> tuple[Fact, ...]:
    """Give every caution a card names: of the container, or object by object."""
    warns = warns_of(card)
    headings = {warn.heading for is_hazard, warn in warns if is_hazard}
    facts = [
        Fact(words, "", item.object_number)
        for item in items_of(card)
        for words in _list_cautions(item.content)
        if words not in headings
    ]
    beside = {fact.name for fact in facts}
    for is_hazard, warn in warns:
        if not is_hazard and (warn.pointers or warn.heading not in beside):
            numbers = [pointer.object_number for pointer in warn.pointers] or [""]
            facts += [Fact(warn.heading, "", number) for number in numbers]
    return tuple(dict.fromkeys(facts))


def is_caution_line(line: str) -> bool:
    """Tell whether a line of details names nothing but cautions."""
    return _CAUTION_NAMES.issuperset(line.split(", "))


def _list_cautions(content: CardObject | ListEntry) -> Iterable[str]:
    if isinstance(content, CardObject):
        return (words for _, words in content.marks)
    return (name for line in content.details if is_caution_line(line) for name in line.split(", "))


def _read_warn(warn: Warn) -> list[Fact]:
    name, state = read_heading(warn.heading)
    numbers = [pointer.object_number for pointer in warn.pointers] or [""]
    return [Fact(name, state, number) for number in numbers]


def _list_item(entry: ListEntry) -> Item:
    layered = _LISTED_LAYER.fullmatch(entry.place)
    layer, place = layered.groups() if layered else ("", entry.place)
    return Item(layer, place, entry)


def _name_layer(heading: str) -> str:
    """Name a layer by what stays when others come and go: neither top nor bottom, nor a title."""
    name = heading.partition(": ")[0].removesuffix(", top").removesuffix(", bottom")
    return name[:1].lower() + name[1:]
