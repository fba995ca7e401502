from __future__ import annotations

from datetime import date

import pytest

from service.cards.words import (
    KIND_WORDS,
    count,
    join_words,
    lower_first,
    write_date,
    write_questions,
)
from service.records.record import ContainerKind, Questions


@pytest.mark.parametrize(
    ("day", "words"),
    [
        (date(2026, 10, 14), "14 Oct 2026"),
        (date(2026, 1, 2), "2 Jan 2026"),
        (date(1999, 12, 31), "31 Dec 1999"),
        (date(987, 5, 1), "1 May 987"),
    ],
)
def test_a_date_cannot_be_read_the_wrong_way_round(day: date, words: str) -> None:
    """The month is a word, whatever the language of the machine."""
    assert write_date(day) == words


def test_words_within_a_sentence() -> None:
    """Only the first letter is a small one; nothing stays nothing."""
    assert lower_first("Nitrile gloves; FFP3 mask") == "nitrile gloves; FFP3 mask"
    assert lower_first("") == ""


def test_counts_agree_with_their_noun() -> None:
    """One is one, and none is many."""
    assert [count(n, "object") for n in (0, 1, 2)] == ["0 objects", "1 object", "2 objects"]


def test_joining_leaves_out_what_says_nothing() -> None:
    """No sign stands between nothing and something."""
    assert join_words(["a", "", "b"]) == "a · b"
    assert not join_words(["", ""])


MUSEUM = Questions("Collections desk", "ext. 214", "I. Hale")


@pytest.mark.parametrize(
    ("own", "words"),
    [
        (Questions(), "Collections desk ext. 214, I. Hale"),
        (Questions(role="Textiles"), "Textiles"),
        (Questions(phone="ext. 9"), "ext. 9"),
        (Questions(person="J. Marsh"), "J. Marsh"),
    ],
)
def test_whom_to_ask(own: Questions, words: str) -> None:
    """Any answer of the container's own wins whole over the museum's; the role comes first."""
    assert write_questions(own, MUSEUM) == words


def test_every_kind_of_container_has_words() -> None:
    """No container prints without saying what it is."""
    assert set(KIND_WORDS) == set(ContainerKind)
