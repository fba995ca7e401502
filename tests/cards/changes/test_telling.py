"""Tests for how a difference between two texts is told."""

from __future__ import annotations

import pytest

from service.cards.changes.change import Change, ChangeKind, Urgency
from service.cards.changes.telling import (
    Topic,
    tell_changed,
    tell_lines,
    tell_move,
    tell_text,
    tell_value,
)

TOPIC = Topic(ChangeKind.OBJECT_WORDS, Urgency.WORDING, "title of X.112", "X.112")
PRIVATE = Topic(ChangeKind.OBJECT_WORDS, Urgency.WORDING, "title of X.112", "X.112", private=True)

TEXTS = {
    "added": ("", "Jar", "title of X.112 added: 'Jar'"),
    "gone": ("Jar", "", "title of X.112 no longer listed: 'Jar'"),
    "other": ("Jar", "Pot", "title of X.112 changed from 'Jar' to 'Pot'"),
    "alike": ("e\u0301t\u00e9", "\u00e9te\u0301", "look alike"),
    "blanks": ("a  b", "a b", "look alike"),
}


@pytest.mark.parametrize(("before", "after", "words"), TEXTS.values(), ids=TEXTS)
def test_texts_are_told_both_ways(before: str, after: str, words: str) -> None:
    """What was there and what is there now stand in the sentence."""
    change = tell_text(TOPIC, before, after)
    assert words in change.words
    assert not change.is_discreet


def test_a_private_text_is_not_repeated_outside() -> None:
    """Outside it is only said that it changed; nothing else of the reason is lost."""
    assert tell_text(PRIVATE, "Revolver", "Pistol") == Change(
        ChangeKind.OBJECT_WORDS,
        Urgency.WORDING,
        "title of X.112 changed from 'Revolver' to 'Pistol'",
        "X.112",
        "title of X.112 changed",
    )


def test_what_repeats_no_text_has_one_wording() -> None:
    """Where the words for inside tell nothing, they stand outside, too."""
    order = list(tell_lines(PRIVATE, ("a", "b"), ("b", "a")))
    assert [tell_changed(PRIVATE), *order] == [
        Change(ChangeKind.OBJECT_WORDS, Urgency.WORDING, words, "X.112")
        for words in ("title of X.112 changed", "order of title of X.112 changed")
    ]


LINES = {
    "one for one": (("a", "b"), ("a", "c"), ["changed from 'b' to 'c'"]),
    "more": (("a",), ("a", "b", "c"), ["added: 'b'", "added: 'c'"]),
    "fewer": (("a", "b"), (), ["no longer listed: 'a'", "no longer listed: 'b'"]),
    "order": (("a", "b"), ("b", "a"), ["order of title of X.112 changed"]),
}


@pytest.mark.parametrize(("before", "after", "words"), LINES.values(), ids=LINES)
def test_lines_are_told_one_by_one(
    before: tuple[str, ...], after: tuple[str, ...], words: list[str]
) -> None:
    """Lines that stayed are not told again."""
    told = [change.words for change in tell_lines(TOPIC, before, after)]
    assert len(told) == len(words)
    assert all(word in one for word, one in zip(words, told, strict=True))


def test_values_are_told_as_far_as_words_can() -> None:
    """Numbers are told as texts; of anything else it is told that it changed."""
    assert [one.words for one in tell_value(TOPIC, 1, 2)] == [
        "title of X.112 changed from '1' to '2'"
    ]
    for before, after in ((None, (1, 2)), ("1", 1), (1, "1"), (1, None), (None, ("a",))):
        told = [one.words for one in tell_value(TOPIC, before, after)]
        assert told == ["title of X.112 changed"]


def test_a_move_names_both_ends() -> None:
    """A place without a name is called so."""
    assert tell_move("X.112", "", "B3") == "X.112 moved from no named place to B3"
    assert tell_move("X.112", "B3", "") == "X.112 moved from B3 to no named place"
