"""Tests for what somebody who scans a card is told at once."""

from __future__ import annotations

import pytest

from service.cards.standing import Answer, Fate, KnownCard, judge, judge_scan

CASES = {
    "holds": ("a", "a", Fate.ATTACHED, Answer.CURRENT, "says what the records say today"),
    "holds, not attached": ("a", "a", Fate.MADE, Answer.CURRENT, "Nobody has marked it"),
    "changed": ("a", "b", Fate.ATTACHED, Answer.OUT_OF_DATE, "something else today"),
    "wanted no more": ("a", None, Fate.ATTACHED, Answer.OUT_OF_DATE, "no card of this kind"),
    "withdrawn": ("a", "a", Fate.WITHDRAWN, Answer.WITHDRAWN, "another one took its place"),
    "spoiled": ("a", "a", Fate.SPOILED, Answer.WITHDRAWN, "marked as spoiled"),
}


@pytest.mark.parametrize(("printed", "today", "fate", "answer", "words"), CASES.values(), ids=CASES)
def test_a_card_is_judged(
    printed: str, today: str | None, fate: Fate, answer: Answer, words: str
) -> None:
    """One word, and a sentence; whatever is not current is not to be relied on."""
    standing = judge(printed, today, fate=fate)
    assert standing.answer is answer
    assert words in standing.sentence
    assert (answer is Answer.CURRENT) is ("o not rely on it" not in standing.sentence)


def known(letters: str, fate: Fate, *, is_current: bool = True) -> KnownCard:
    """Give a card of revision 7."""
    return KnownCard(7, letters, "a", "a" if is_current else "b", fate)


def test_revision_and_letters_must_both_be_known() -> None:
    """A number alone could have been typed by anybody."""
    cards = [known("KMTF", Fate.ATTACHED)]
    assert judge_scan(7, "kmtf ", cards).answer is Answer.CURRENT
    for revision, letters in ((6, "KMTF"), (7, "KMTG"), (None, "KMTF"), (7, "")):
        assert judge_scan(revision, letters, cards).answer is Answer.UNKNOWN


def test_what_was_typed_is_not_repeated() -> None:
    """Letters that cannot be a card's do not come back on the page."""
    standing = judge_scan(7, "<b>all", [])
    assert "<" not in standing.sentence
    assert "BCDF" in judge_scan(7, "BCDF", []).sentence


def test_of_cards_that_look_alike_the_attached_one_counts() -> None:
    """It is the one in the hand; if two are, the one that is out of date is believed."""
    spoiled, attached = known("KMTF", Fate.SPOILED), known("KMTF", Fate.ATTACHED)
    assert judge_scan(7, "KMTF", [spoiled, attached]).answer is Answer.CURRENT
    wrong = known("KMTF", Fate.ATTACHED, is_current=False)
    assert judge_scan(7, "KMTF", [attached, wrong]).answer is Answer.OUT_OF_DATE


def test_a_symbol_without_a_revision_asks_to_compare_letters() -> None:
    """End labels and tags carry neither revision nor letters."""
    standing = judge_scan(None, "", [known("KMTF", Fate.ATTACHED)])
    assert standing.answer is Answer.UNKNOWN
    assert "compare the letters" in standing.sentence
