"""Tells what changed in the head of a card and in what only cards of its kind carry."""

from __future__ import annotations

from collections.abc import Iterator

from service.cards.card import Card, CoverCard
from service.cards.changes.change import Change, ChangeKind, Hint, Urgency
from service.cards.changes.compare_second import compare_second
from service.cards.changes.telling import (
    Topic,
    differing,
    tell_changed,
    tell_text,
    tell_value,
)
from service.cards.changes.views import discreet_numbers
from service.cards.parts import Head

RESTLESS = ("revision", "packed", "query", "check_letters")
"""What the fingerprint leaves out: these change without making a card wrong."""

_HEAD = {
    "container_number": Topic(ChangeKind.CONTAINER, Urgency.CONTENTS, "container number"),
    "kind_words": Topic(ChangeKind.CONTAINER, Urgency.CONTENTS, "kind of container"),
    "title": Topic(ChangeKind.CONTAINER, Urgency.WORDING, "container title"),
    "museum": Topic(ChangeKind.CARD, Urgency.WORDING, "name of the museum"),
    "location": Topic(ChangeKind.CONTAINER, Urgency.WORDING, "location", private=True),
    "address": Topic(ChangeKind.CARD, Urgency.WORDING, "address in the symbol"),
    "questions": Topic(ChangeKind.CARD, Urgency.WORDING, "whom to ask"),
}

_FIELDS = {
    "grid": (ChangeKind.ARRANGEMENT, Urgency.CONTENTS, "grid of compartments"),
    "orientation": (ChangeKind.CARD, Urgency.CONTENTS, "which edge faces the label"),
    "side": (ChangeKind.CARD, Urgency.WORDING, "side of the label"),
    "sides": (ChangeKind.CARD, Urgency.WORDING, "number of labels"),
    "object_name": (ChangeKind.OBJECT_WORDS, Urgency.WORDING, "name of the object"),
    "period": (ChangeKind.OBJECT_WORDS, Urgency.WORDING, "period"),
    "hang_advice": (ChangeKind.LIFT, Urgency.HAZARD_OR_LIFT, "hanging advice"),
    "back_photo": (ChangeKind.PHOTO, Urgency.WORDING, "second photo"),
    "accessories": (ChangeKind.OBJECT_WORDS, Urgency.WORDING, "accessories"),
    "notes": (ChangeKind.OBJECT_WORDS, Urgency.WORDING, "notes"),
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
}
"""Fields that have comparers of their own."""

_MAIN_FIELDS = {"object_name", "period", "back_photo", "accessories", "notes"}
"""What a cover card says of its main object."""


def compare_card(printed: Card, today: Card) -> Iterator[Change]:
    """Tell what changed in the head and in the fields of one kind of card."""
    yield from _compare_head(printed.head, today.head)
    number = today.main.object_number if isinstance(today, CoverCard) else ""
    private = bool(discreet_numbers(printed) | discreet_numbers(today))
    for name, before, after in differing(printed, today):
        if name in _ELSEWHERE:
            continue
        kind, urgency, what = _FIELDS.get(name, (ChangeKind.CARD, Urgency.WORDING, name))
        named = number if name in _MAIN_FIELDS else ""
        topic = Topic(
            kind,
            urgency,
            f"{what} of {named}" if named else what,
            named,
            private=private and kind is ChangeKind.OBJECT_WORDS,
        )
        if name == "back_photo":
            yield tell_changed(topic)
        else:
            yield from tell_value(topic, before, after)


def hint_count(printed: Card, today: Card) -> Iterator[Hint]:
    """Tell that a card counts its objects otherwise; a cover card does not count."""
    if isinstance(printed, CoverCard) or isinstance(today, CoverCard):
        return
    if printed.count_words != today.count_words:
        topic = Topic(ChangeKind.ARRANGEMENT, Urgency.CONTENTS, "count of objects")
        yield Hint(tell_text(topic, printed.count_words, today.count_words))


def _compare_head(before: Head, after: Head) -> Iterator[Change]:
    for name, old, new in differing(before, after):
        if name == "second":
            yield from compare_second(before.second, after.second)
        elif name not in RESTLESS:
            unnamed = Topic(ChangeKind.CARD, Urgency.WORDING, name)
            yield from tell_value(_HEAD.get(name, unnamed), old, new)
