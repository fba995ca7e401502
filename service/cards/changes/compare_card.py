"""Tells what changed in the head of a card and in what only cards of its kind carry."""

from __future__ import annotations

from collections.abc import Iterator

from service.cards.card import Card, CoverCard, ObjectTag
from service.cards.changes.change import Change, ChangeKind, Hint, Urgency
from service.cards.changes.compare_second import compare_second
from service.cards.changes.facts import DISCREET_NAMES
from service.cards.changes.telling import (
    Topic,
    differing,
    tell_changed,
    tell_text,
    tell_value,
)
from service.cards.changes.views import discreet_numbers, hazards_of
from service.cards.compose.objects import is_hidden
from service.cards.parts import Head
from service.printed import to_print

RESTLESS = ("revision", "packed", "query", "check_letters")
"""What the fingerprint leaves out: these change without making a card wrong."""

_HEAD = {
    "container_number": Topic(ChangeKind.CONTAINER, Urgency.CONTENTS, to_print("container number")),
    "kind_words": Topic(ChangeKind.CONTAINER, Urgency.CONTENTS, to_print("kind of container")),
    "title": Topic(ChangeKind.CONTAINER, Urgency.WORDING, to_print("container title")),
    "museum": Topic(ChangeKind.CARD, Urgency.WORDING, to_print("name of the museum")),
    "location": Topic(ChangeKind.CONTAINER, Urgency.WORDING, to_print("location"), private=True),
    "address": Topic(ChangeKind.CARD, Urgency.WORDING, to_print("address in the symbol")),
    "questions": Topic(ChangeKind.CARD, Urgency.WORDING, to_print("whom to ask")),
}

_FIELDS = {
    "grid": (ChangeKind.ARRANGEMENT, Urgency.CONTENTS, to_print("grid of compartments")),
    "orientation": (ChangeKind.CARD, Urgency.CONTENTS, to_print("which edge faces the label")),
    "side": (ChangeKind.CARD, Urgency.WORDING, to_print("side of the label")),
    "sides": (ChangeKind.CARD, Urgency.WORDING, to_print("number of labels")),
    "object_name": (ChangeKind.OBJECT_WORDS, Urgency.WORDING, to_print("name of the object")),
    "period": (ChangeKind.OBJECT_WORDS, Urgency.WORDING, to_print("period")),
    "hang_advice": (ChangeKind.LIFT, Urgency.HAZARD_OR_LIFT, to_print("hanging advice")),
    "hang_reason": (
        ChangeKind.OBJECT_WORDS,
        Urgency.WORDING,
        to_print("reason of the hanging advice"),
    ),
    "back_photo": (ChangeKind.PHOTO, Urgency.WORDING, to_print("second photo")),
    "accessories": (ChangeKind.OBJECT_WORDS, Urgency.WORDING, to_print("accessories")),
    "notes": (ChangeKind.OBJECT_WORDS, Urgency.WORDING, to_print("notes")),
    "object_number": (ChangeKind.CARD, Urgency.CONTENTS, to_print("number of the object")),
    "former_numbers": (ChangeKind.OBJECT_WORDS, Urgency.WORDING, to_print("former numbers")),
    "title": (ChangeKind.OBJECT_WORDS, Urgency.WORDING, "title"),
}
_ELSEWHERE = {
    "head",
    "handling",
    "lift",
    "marks",
    "count_words",
    "layers",
    "main",
    "others",
    "entries",
    "hazards",
    "cautions",
    "groups",
    "objects",
}
"""Fields that have comparers of their own."""

_MAIN_FIELDS = {
    "object_name",
    "period",
    "back_photo",
    "accessories",
    "notes",
    "former_numbers",
    "title",
}
"""What a cover card says of its main object, and a tag of the one it is tied to."""


def compare_card(printed: Card, today: Card) -> Iterator[Change]:
    """Tell what changed in the head and in the fields of one kind of card."""
    yield from _compare_head(printed.head, today.head)
    number = _main_number(today)
    private = _is_private(printed) or _is_private(today)
    for name, before, after in differing(printed, today):
        if name in _ELSEWHERE:
            continue
        kind, urgency, what = _FIELDS[name]
        named = number if name in _MAIN_FIELDS else ""
        topic = Topic(
            kind,
            urgency,
            to_print("{what} of {named}", what=what, named=named) if named else what,
            named,
            private=private and kind is ChangeKind.OBJECT_WORDS,
        )
        if name == "back_photo":
            yield tell_changed(topic)
        else:
            yield from tell_value(topic, before, after)


def hint_count(printed: Card, today: Card) -> Iterator[Hint]:
    """Tell that a card counts its objects otherwise; not every kind counts them."""
    before, after = (getattr(card, "count_words", "") for card in (printed, today))
    if before != after:
        topic = Topic(ChangeKind.ARRANGEMENT, Urgency.CONTENTS, to_print("count of objects"))
        yield Hint(tell_text(topic, before, after))


def _main_number(card: Card) -> str:
    if isinstance(card, ObjectTag):
        return card.object_number
    return card.main.object_number if isinstance(card, CoverCard) else ""


def _is_private(card: Card) -> bool:
    """Tell whether a card has an object of which neither title nor photo may stand outside."""
    if isinstance(card, ObjectTag):
        return any(fact.name in DISCREET_NAMES for fact in hazards_of(card)) or is_hidden(
            card.title
        )
    return bool(discreet_numbers(card))


def _compare_head(before: Head, after: Head) -> Iterator[Change]:
    for name, old, new in differing(before, after):
        if name == "second":
            yield from compare_second(before.second, after.second)
        elif name not in RESTLESS:
            yield from tell_value(_HEAD[name], old, new)
