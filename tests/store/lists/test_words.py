from __future__ import annotations

import pytest

from service.records.record import ContainerRecord, ObjectRecord
from service.store.lists.words import split_words, words_of_container, words_of_object

TEXTS = {
    "Gŵn du": ["gwn", "du"],
    "1987.412.10-b": ["1987", "412", "10", "b"],
    "Straße": ["strasse"],
    "ﬁle": ["file"],
    "№ 12": ["no", "12"],
    "5 ㎏": ["5", "kg"],
    "ᾳ": ["\u03b1"],
    "snake_case": ["snake", "case"],
    "日本 の": ["日本", "の"],
    "--": [],
}


@pytest.mark.parametrize(("text", "words"), TEXTS.items(), ids=TEXTS)
def test_words_are_folded(text: str, words: list[str]) -> None:
    """Case, accents and ligatures are no matter; separators stand between words."""
    assert split_words(text) == words


def test_each_word_is_kept_once() -> None:
    """Numbers are kept in parts and as a whole."""
    record = ObjectRecord("X.112", "Jar", object_name="jar", former_numbers=("A/1",))
    assert words_of_object(record) == "jar x 112 x112 a 1 a1"
    box = ContainerRecord("B-1", title="Jars", location=("Store 2",))
    assert words_of_container(box) == "jars box store 2 b 1 b1"
