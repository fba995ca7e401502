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


UNKNOWN = {
    "another revision": (6, "KMTF", "A card of revision 6 with the letters KMTF"),
    "other letters": (7, "kmtg", "A card of revision 7 with the letters KMTG"),
    "letters alone": (None, "KMTF", "A card without a revision with the letters KMTF"),
    "a revision alone": (7, "", "A card of revision 7 with such letters"),
    "too many letters": (7, "KMTFK", "A card of revision 7 with such letters"),
    "no letters of a card": (7, "<b>A", "A card of revision 7 with such letters"),
    "neither": (None, "<b>all", "A card without a revision with such letters"),
}


@pytest.mark.parametrize(("revision", "letters", "begin"), UNKNOWN.values(), ids=UNKNOWN)
def test_an_unknown_card_is_named_as_it_was_scanned(
    revision: int | None, letters: str, begin: str
) -> None:
    """Letters that cannot be a card's do not come back on the page."""
    standing = judge_scan(revision, letters, [known("KMTF", Fate.ATTACHED)])
    assert standing.answer is Answer.UNKNOWN
    assert standing.sentence.startswith(f"{begin} is not known for this container.")


FATES = {
    Fate.ATTACHED: (Answer.CURRENT, "look before you handle, and ask if in doubt."),
    Fate.MADE: (Answer.CURRENT, "Nobody has marked it as attached yet."),
    Fate.WITHDRAWN: (Answer.WITHDRAWN, "Take it off; do not rely on it."),
    Fate.SPOILED: (Answer.WITHDRAWN, "It should be on no container; do not rely on it."),
}


@pytest.mark.parametrize(("fate", "told"), FATES.items(), ids=FATES)
def test_a_scanned_card_is_told_its_fate(fate: Fate, told: tuple[Answer, str]) -> None:
    """Whoever holds a card that was taken off already hears so, though its words still hold."""
    standing = judge_scan(7, "KMTF", [known("KMTF", fate)])
    assert (standing.answer, standing.sentence.endswith(told[1])) == (told[0], True)


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
