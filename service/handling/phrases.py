"""Looks for whole words in what people wrote, so that "oak" is not found in "cloak"."""

from __future__ import annotations

import re
from collections.abc import Iterable

_WORD = re.compile(r"\w+")
_CLAUSE = re.compile(r"[;,.:()]|\b(?:but|and)\b", re.IGNORECASE)
_DENIALS = ("no", "not", "never", "without", "none", "unfolded", "removed", "formerly")


def words_of(text: str) -> str:
    """Give the words of a text in small letters with one blank around each."""
    return f" {' '.join(_WORD.findall(text.casefold()))} "


def find_phrase(text: str, phrases: Iterable[str]) -> str:
    """Give the first of the phrases that stands in a text as whole words, or nothing."""
    words = words_of(text)
    return next((phrase for phrase in phrases if f" {phrase} " in words), "")


def find_clause(text: str, phrases: Iterable[str], *, unless: Iterable[str] = ()) -> str:
    """Give the first clause that says one of the phrases, neither denied nor excused in it.

    Clauses are parted by signs and by "and" and "but": in "no pins; hem folded" only the pins
    are denied.
    """
    wanted, excuses = tuple(phrases), (*_DENIALS, *unless)
    for clause in _CLAUSE.split(text):
        if find_phrase(clause, wanted) and not find_phrase(clause, excuses):
            return clause.strip()
    return ""
