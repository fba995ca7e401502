"""Tells what changed in the words of a second language."""

from __future__ import annotations

from collections.abc import Iterator

from service.cards.changes.change import Change, ChangeKind, Urgency
from service.cards.changes.telling import Topic, tell_changed, tell_text
from service.cards.parts import SecondWords
from service.printed import to_print

_LANGUAGE = Topic(ChangeKind.CARD, Urgency.WORDING, to_print("second language"))
_TRANSLATION = Topic(ChangeKind.CARD, Urgency.WORDING, to_print("translation beside the English"))


def compare_second(before: SecondWords | None, after: SecondWords | None) -> Iterator[Change]:
    """Tell another language, or another translation of what both cards say.

    Words that came or went with the English ones need no reason of their own.
    """
    old, new = (second.language if second else "" for second in (before, after))
    if old != new:
        yield tell_text(_LANGUAGE, old, new)
    elif before and after and _read_otherwise(before, after):
        yield tell_changed(_TRANSLATION)


def _read_otherwise(before: SecondWords, after: SecondWords) -> bool:
    today = dict(after.words)
    changed = any(today.get(english, said) != said for english, said in before.words)
    return changed or before.note != after.note
