from __future__ import annotations

from sqlalchemy import Connection

from service.store.lists.index import OBJECT_WORDS, find_keys, forget_words, keep_words


def test_words_are_kept_in_place_of_those_before(connection: Connection) -> None:
    """A row is found by the beginnings of its words, each of which it must hold."""
    keep_words(connection, OBJECT_WORDS, {71: "bait jar", 72: "jar lid"})
    assert sorted(find_keys(connection, OBJECT_WORDS, ["ja"])) == [71, 72]
    assert find_keys(connection, OBJECT_WORDS, ["ja", "ba"]) == [71]
    keep_words(connection, OBJECT_WORDS, {71: "crab pot"})
    assert find_keys(connection, OBJECT_WORDS, ["jar"]) == [72]
    assert find_keys(connection, OBJECT_WORDS, []) == []
    forget_words(connection, OBJECT_WORDS, [72, 99])
    assert find_keys(connection, OBJECT_WORDS, ["jar"]) == []
