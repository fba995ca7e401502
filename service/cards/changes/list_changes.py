"""Why a printed card no longer says what the records say: the whole list."""

from __future__ import annotations

from collections.abc import Sequence

from service.cards.card import Card
from service.cards.changes.change import Change, ChangeKind, Hint, Urgency
from service.cards.changes.compare_card import compare_card, hint_count
from service.cards.changes.compare_groups import compare_groups
from service.cards.changes.compare_objects import compare_objects, hint_objects
from service.cards.changes.compare_warnings import compare_warnings, hint_warnings
from service.cards.changes.telling import Topic, tell_text
from service.cards.fingerprint import fingerprint_card
from service.printed import to_print

_ARRANGING = {
    ChangeKind.ADDED,
    ChangeKind.TAKEN_OUT,
    ChangeKind.MOVED,
    ChangeKind.ARRANGEMENT,
}
"""What explains another count or order."""


def list_changes(printed: Card, today: Card) -> tuple[Change, ...]:
    """Give the reasons why a printed card is wrong today, the most urgent first.

    There is at least one if, and only if, the fingerprints of the two cards differ.
    """
    if printed.kind != today.kind:
        topic = Topic(ChangeKind.CARD, Urgency.CONTENTS, to_print("kind of card"))
        return (tell_text(topic, printed.kind, today.kind),)
    changes = [
        *compare_warnings(printed, today),
        *compare_objects(printed, today),
        *compare_groups(printed, today),
        *compare_card(printed, today),
    ]
    hints = (
        *hint_objects(printed, today),
        *hint_count(printed, today),
        *hint_warnings(printed, today),
    )
    unexplained = [hint.change for hint in hints if not _is_explained(hint, changes)]
    told = dict.fromkeys((*changes, *unexplained)) or _tell_anything(printed, today)
    return tuple(sorted(told, key=lambda change: change.urgency))


def _tell_anything(printed: Card, today: Card) -> tuple[Change, ...]:
    """Say that a card is wrong where nothing above says why: no card is wrong without a reason."""
    if fingerprint_card(printed) == fingerprint_card(today):
        return ()
    return (Change(ChangeKind.CARD, Urgency.CONTENTS, to_print("what the card shows changed")),)


def _is_explained(hint: Hint, changes: Sequence[Change]) -> bool:
    if hint.numbers:
        return any(change.object_number in hint.numbers for change in changes)
    return any(change.kind in _ARRANGING for change in changes)
