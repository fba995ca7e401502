"""How a difference between two texts is told."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, fields
from typing import TypeGuard

from service.cards.card import Card, ListEntry
from service.cards.changes.change import Change, ChangeKind, Urgency
from service.cards.parts import CardObject, Head, Warn
from service.handling.lifting import LiftAdvice
from service.printed import to_print

Part = Card | Head | LiftAdvice | Warn | CardObject | ListEntry


@dataclass(frozen=True, slots=True)
class Topic:
    """What a difference is about; the texts of one that is `private` may not stand outside."""

    kind: ChangeKind
    urgency: Urgency
    what: str
    object_number: str = ""
    private: bool = False


def differing(before: Part, after: Part) -> tuple[tuple[str, object, object], ...]:
    """Give the fields that differ between two parts of one kind: name, before and after."""
    pairs = [
        (each.name, getattr(before, each.name), getattr(after, each.name))
        for each in fields(before)
    ]
    return tuple((name, old, new) for name, old, new in pairs if old != new)


def tell(topic: Topic, words: str, *, outside: str) -> Change:
    """Tell a change; `outside` are the words for outside where the topic is private."""
    discreet = outside if topic.private and outside != words else ""
    return Change(topic.kind, topic.urgency, words, topic.object_number, discreet)


def tell_changed(topic: Topic) -> Change:
    """Tell that something changed without saying how."""
    return tell(
        topic,
        to_print("{what} changed", what=topic.what),
        outside=to_print("{what} changed", what=topic.what),
    )


def tell_value(topic: Topic, before: object, after: object) -> Iterator[Change]:
    """Tell how two values differ as far as words can: texts, whole numbers and lists of texts."""
    if isinstance(before, str) and isinstance(after, str):
        yield tell_text(topic, before, after)
    elif isinstance(before, int) and isinstance(after, int):
        yield tell_text(topic, str(before), str(after))
    elif _is_lines(before) and _is_lines(after):
        yield from tell_lines(topic, before, after)
    else:
        yield tell_changed(topic)


def tell_text(topic: Topic, before: str, after: str) -> Change:
    """Tell how two texts differ; texts that only look alike are said to do so."""
    what = topic.what
    if not before:
        words = to_print("{what} added: '{after}'", what=what, after=after)
    elif not after:
        words = to_print("{what} no longer listed: '{before}'", what=what, before=before)
    elif _looks(before) == _looks(after):
        words = to_print(
            "{what} changed to other characters that look alike: '{after}'", what=what, after=after
        )
    else:
        words = to_print(
            "{what} changed from '{before}' to '{after}'", what=what, before=before, after=after
        )
    return tell(topic, words, outside=to_print("{what} changed", what=what))


def tell_lines(topic: Topic, before: Sequence[str], after: Sequence[str]) -> Iterator[Change]:
    """Tell which lines came, went or changed; one for one counts as changed."""
    gone = [line for line in before if line not in after]
    new = [line for line in after if line not in before]
    if len(gone) == len(new) == 1:
        yield tell_text(topic, gone[0], new[0])
        return
    yield from (tell_text(topic, line, "") for line in gone)
    yield from (tell_text(topic, "", line) for line in new)
    if not gone and not new:
        words = to_print("order of {what} changed", what=topic.what)
        yield tell(topic, words, outside=words)


def tell_move(number: str, before: str, after: str) -> str:
    """Say from which place to which an object moved."""
    return to_print(
        "{number} moved from {before} to {after}",
        number=number,
        before=before or to_print("no named place"),
        after=after or to_print("no named place"),
    )


def _is_lines(value: object) -> TypeGuard[tuple[str, ...]]:
    return isinstance(value, tuple) and all(isinstance(line, str) for line in value)


def _looks(text: str) -> str:
    return " ".join(unicodedata.normalize("NFC", text).split())
