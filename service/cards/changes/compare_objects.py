"""Tells which objects came, went, moved, or are shown in other words."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from service.cards.card import Card, ListEntry
from service.cards.changes.change import Change, ChangeKind, Hint, Urgency
from service.cards.changes.facts import Fact
from service.cards.changes.telling import (
    Topic,
    differing,
    tell_changed,
    tell_move,
    tell_text,
    tell_value,
)
from service.cards.changes.views import (
    Item,
    cautions_of,
    discreet_numbers,
    hazards_of,
    is_caution_line,
    items_of,
    layers_of,
)
from service.cards.parts import CardObject
from service.printed import to_print

_WORDS = {
    "aside": to_print("parts and note"),
    "photo": to_print("photo"),
    "photo_words": to_print("words in place of the photo"),
    "marks": to_print("marks beside the object"),
    "details": to_print("details"),
    "hazards": to_print("what is said of hazards"),
    "cell": to_print("compartment on the map"),
}
_KINDS = {
    "photo": (ChangeKind.PHOTO, Urgency.WORDING),
    "hazards": (ChangeKind.HAZARD_WORDS, Urgency.HAZARD_OR_LIFT),
    "marks": (ChangeKind.CAUTION_WORDS, Urgency.CONTENTS),
    "cell": (ChangeKind.MOVED, Urgency.CONTENTS),
}

_FOLLOWS = {"photo_words": "photo", "cell": "place"}
"""Fields that change with another one, which tells it."""


@dataclass(frozen=True, slots=True)
class _Pairs:
    """Objects of both cards, and those of one only."""

    both: list[tuple[Item, Item]]
    gone: list[Item]
    new: list[Item]


@dataclass(frozen=True, slots=True)
class _Known:
    """What must be known of all objects before one is compared.

    The hazards and cautions of those in `told` differ, and are told as facts already.
    """

    discreet: frozenset[str]
    told: frozenset[str]


def compare_objects(printed: Card, today: Card) -> Iterator[Change]:
    """Tell which objects came, went or moved, and how those that stayed are shown now."""
    pairs = _pair(items_of(printed), items_of(today))
    stayed = _numbers(printed) & _numbers(today)
    for items, kind, verb in (
        (pairs.new, ChangeKind.ADDED, to_print("added")),
        (pairs.gone, ChangeKind.TAKEN_OUT, to_print("taken out")),
    ):
        for item in items:
            number = item.object_number
            words = (
                to_print("another part of {number} {verb}", number=number, verb=verb)
                if number in stayed
                else to_print("{number} {verb}", number=number, verb=verb)
            )
            yield Change(kind, Urgency.CONTENTS, words, number)
    if layers_of(printed) != layers_of(today):
        yield tell_text(
            Topic(ChangeKind.ARRANGEMENT, Urgency.CONTENTS, to_print("layers")),
            _write_layers(printed),
            _write_layers(today),
        )
    known = _Known(discreet_numbers(printed) | discreet_numbers(today), _told(printed, today))
    for before, after in pairs.both:
        yield from _compare_place(before, after)
        yield from _compare_fields(before, after, known)


def hint_objects(printed: Card, today: Card) -> Iterator[Hint]:
    """Tell that objects stand in another order."""
    old, new = ([item.object_number for item in items_of(card)] for card in (printed, today))
    if [number for number in old if number in new] != [number for number in new if number in old]:
        words = to_print("order of the objects changed")
        yield Hint(Change(ChangeKind.ARRANGEMENT, Urgency.CONTENTS, words))


def _pair(before: Iterable[Item], after: Iterable[Item]) -> _Pairs:
    """Pair objects by their numbers; of one that lies in several places the equal ones first."""
    left: dict[str, list[Item]] = defaultdict(list)
    for item in before:
        left[item.object_number].append(item)
    changed: list[Item] = []
    for item in after:
        same = left[item.object_number]
        if item in same:
            same.remove(item)
        else:
            changed.append(item)
    pairs = _Pairs([], [], [])
    for item in changed:
        same = left[item.object_number]
        if same:
            pairs.both.append((same.pop(0), item))
        else:
            pairs.new.append(item)
    pairs.gone.extend(item for items in left.values() for item in items)
    return pairs


def _numbers(card: Card) -> set[str]:
    return {item.object_number for item in items_of(card)}


def _told(printed: Card, today: Card) -> frozenset[str]:
    """Name the objects whose hazards or cautions are other ones on one card than on the other."""
    differing: set[Fact] = {*hazards_of(printed)} ^ {*hazards_of(today)}
    differing |= {*cautions_of(printed)} ^ {*cautions_of(today)}
    return frozenset(fact.object_number for fact in differing)


def _write_layers(card: Card) -> str:
    return "; ".join(layer or to_print("one layer") for layer in layers_of(card))


def _compare_place(before: Item, after: Item) -> Iterator[Change]:
    """Tell a move; an object moves between layers only where both cards name them."""
    old, new = before.place, after.place
    if before.layer and after.layer and before.layer != after.layer:
        old, new = (f"{item.layer} {item.place}".strip() for item in (before, after))
    if old != new:
        number = after.object_number
        words = tell_move(number, old, new)
        yield Change(ChangeKind.MOVED, Urgency.CONTENTS, words, number)


def _compare_fields(before: Item, after: Item, known: _Known) -> Iterator[Change]:
    number = after.object_number
    old_content, new_content = before.content, after.content
    if number in known.told:
        old_content, new_content = _leave_facts(old_content), _leave_facts(new_content)
    changed = {name: (old, new) for name, old, new in differing(old_content, new_content)}
    for name, (old, new) in changed.items():
        if name == "place" or (_FOLLOWS.get(name) in changed):
            continue
        kind, urgency = _KINDS.get(name, (ChangeKind.OBJECT_WORDS, Urgency.WORDING))
        what = to_print("{name} of {number}", name=_WORDS.get(name, name), number=number)
        topic = Topic(kind, urgency, what, number, private=number in known.discreet)
        if name == "photo":
            yield tell_changed(topic)
        else:
            yield from tell_value(topic, old, new)


def _leave_facts(content: CardObject | ListEntry) -> CardObject | ListEntry:
    """Leave out the hazards and cautions of an object, where they are told as facts."""
    if isinstance(content, CardObject):
        return replace(content, marks=())
    details = tuple(line for line in content.details if not is_caution_line(line))
    return replace(content, hazards=(), details=details)
