"""Words of pages that are made in code, in the language of whoever the page is for.

`say` and `say_many` mark them for the catalogue of translators, as `_` and `ngettext` do in
templates. Words that are made elsewhere, such as errors, come as a `Sentence` or as a word of a
table, and are `said` where they are shown.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar

from service.languages.page_words import ENGLISH, PageWords, load_page_words
from service.sentence import Sentence, has_words

_SPOKEN = ContextVar("spoken", default=ENGLISH)


@contextmanager
def speaking(language: str) -> Iterator[None]:
    """Say everything within in a language of the list."""
    token = _SPOKEN.set(language)
    try:
        yield
    finally:
        _SPOKEN.reset(token)


def spoken() -> PageWords:
    """Give the words of the language that is spoken now: English, unless somebody says another."""
    return load_page_words(_SPOKEN.get())


def say(english: str, /, **values: object) -> str:
    """Say a sentence of a page, with values in the places that name them.

    `english` must be written out where it is said: the catalogue is made by reading, not running.
    """
    return said(Sentence(english, **values))


def say_many(one: str, many: str, num: int, /, **values: object) -> str:
    """Say a sentence in the form that a number asks for; it stands at `{num}`."""
    return spoken().messages.ngettext(one, many, num).format(num=num, **values)


def said(english: str) -> str:
    """Say a sentence, or a word of a table; what no catalogue has stays English."""
    return find_said(english) or str(english)


def find_said(english: str) -> str | None:
    """Find how something is said; None where it would have to stay English."""
    template = english.template if isinstance(english, Sentence) else english
    found = spoken().translate(template) or (None if has_words(template) else template)
    if not isinstance(english, Sentence) or not english.values:
        return found
    if found is None:
        # Phrases of handling are known with their values in them, too.
        return spoken().translate(str(english))
    values = {
        name: said(value) if isinstance(value, Sentence) else value
        for name, value in english.values.items()
    }
    return found.format(**values)
