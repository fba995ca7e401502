"""Tells what changed on warning labels beside what warnings of every card say."""

from __future__ import annotations

from collections.abc import Iterator

from service.cards.card import Card, WarningLabel
from service.cards.changes.change import Change, ChangeKind, Urgency
from service.cards.changes.telling import Topic, tell_text
from service.cards.parts import HazardGroup, WarnedObject
from service.cards.words import lower_first
from service.printed import to_print

_Key = tuple[str, str]
"""A hazard by its name, and the number of an object that has it."""


def compare_groups(printed: Card, today: Card) -> Iterator[Change]:
    """Tell of the hazards on both sets of labels whom to ask, what to wear, and each check anew."""
    if not isinstance(printed, WarningLabel) or not isinstance(today, WarningLabel):
        return
    before = {group.name: group for group in printed.groups}
    for group in today.groups:
        if group.name in before:
            yield from _compare_words(before[group.name], group)
    old = _by_key(printed.groups)
    new = _by_key(today.groups)
    for key in new:
        if key in old:
            yield from _compare(key, old[key], new[key])


def _compare_words(before: HazardGroup, after: HazardGroup) -> Iterator[Change]:
    for what, was, now in (
        (to_print("whom to ask about {name}", name=after.name), before.ask, after.ask),
        (to_print("protection from {name}", name=after.name), before.protection, after.protection),
    ):
        if was != now:
            yield tell_text(Topic(ChangeKind.HAZARD_WORDS, Urgency.WORDING, what), was, now)


def _by_key(groups: tuple[HazardGroup, ...]) -> dict[_Key, WarnedObject]:
    return {(group.name, item.object_number): item for group in groups for item in group.objects}


def _compare(key: _Key, before: WarnedObject, after: WarnedObject) -> Iterator[Change]:
    name, number = key
    if before.checked != after.checked:
        topic = Topic(
            ChangeKind.HAZARD_WORDS,
            Urgency.WORDING,
            to_print(
                "check of {hazard} on {number}",
                hazard=lower_first(name),
                number=number,
            ),
            number,
        )
        yield tell_text(topic, before.checked, after.checked)
    if before.title != after.title:
        topic = Topic(
            ChangeKind.OBJECT_WORDS,
            Urgency.WORDING,
            to_print("title of {number}", number=number),
            number,
            private=True,
        )
        yield tell_text(topic, before.title, after.title)
