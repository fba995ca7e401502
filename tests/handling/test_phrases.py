from __future__ import annotations

import pytest

from service.handling.phrases import find_clause, find_phrase, words_of


def test_words_stand_between_blanks() -> None:
    """Signs and capitals do not matter, and every word has a blank on both sides."""
    assert words_of("Acid-free board (new)") == " acid free board new "


@pytest.mark.parametrize(
    ("text", "phrase"),
    [
        ("Oak, waxed", "oak"),
        ("cloak", ""),
        ("oaken", ""),
        ("acid board", "acid board"),
        ("acid-free board", ""),
    ],
)
def test_only_whole_words_are_found(text: str, phrase: str) -> None:
    """A cloak is of no oak, and board without acid is no acid board."""
    assert find_phrase(text, ("oak", "acid board")) == phrase


@pytest.mark.parametrize(
    ("text", "clause"),
    [
        ("Sound; two pins in the hem", "two pins in the hem"),
        ("No pins", ""),
        ("No pins, rusty staples", "rusty staples"),
        ("Not worn but staples left in", "staples left in"),
        ("staples in tissue", ""),
    ],
)
def test_a_clause_is_denied_or_excused_alone(text: str, clause: str) -> None:
    """What is denied in one clause is not denied in the next."""
    assert find_clause(text, ("pins", "staples"), unless=("tissue",)) == clause


@pytest.mark.parametrize(
    "denial", ["no", "not", "never", "without", "none", "unfolded", "removed", "formerly"]
)
def test_each_word_that_denies(denial: str) -> None:
    """It denies its own clause, and no other."""
    assert find_clause(f"{denial} pins", ("pins",)) == ""
    assert find_clause(f"{denial} stains; pins", ("pins",)) == "pins"
