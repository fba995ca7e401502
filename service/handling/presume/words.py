"""Whole words of a record: phrases are found as they are written or in the plural, never inside."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence

_WORD = re.compile(r"[^\W_]+(?:'[^\W_]+)*")

Words = tuple[str, ...]

Phrases = Mapping[str, tuple[Words, ...]]
"""Phrases by their first word."""


def split_words(text: str) -> Words:
    """Split a text into its words in small letters; hyphens divide, apostrophes do not."""
    return tuple(_WORD.findall(text.casefold().replace("\u2019", "'")))


def make_phrases(texts: Iterable[str]) -> Phrases:
    """File phrases under their first words."""
    filed: dict[str, tuple[Words, ...]] = {}
    for text in texts:
        words = split_words(text)
        filed[words[0]] = (*filed.get(words[0], ()), words)
    return filed


def has_phrase(words: Words, phrases: Phrases, *, not_before: Phrases | None = None) -> bool:
    """Tell whether one of the phrases stands in `words`, unless one of `not_before` follows it."""
    for start, written in enumerate(words if phrases else ()):
        for first in singulars(written):
            for phrase in phrases.get(first, ()):
                rest = words[start + len(phrase) :]
                if _begins(words[start:], phrase) and not _begins_any(rest, not_before or {}):
                    return True
    return False


def singulars(word: str) -> Words:
    """Give the words of which this may be the plural, and the word itself."""
    if not word.endswith("s"):
        return (word,)
    return (word, word[:-1], word[:-2]) if word.endswith("es") else (word, word[:-1])


def _begins_any(words: Words, phrases: Phrases) -> bool:
    return bool(words) and any(
        _begins(words, phrase) for first in singulars(words[0]) for phrase in phrases.get(first, ())
    )


def _begins(words: Words, phrase: Sequence[str]) -> bool:
    return len(words) >= len(phrase) and all(
        word in singulars(written) for word, written in zip(phrase, words, strict=False)
    )
