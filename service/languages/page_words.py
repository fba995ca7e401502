"""The words of pages in the language of the reader: gettext, and dates as it writes them."""

from __future__ import annotations

import gettext
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from functools import cache
from io import BytesIO
from pathlib import Path

from babel import Locale, negotiate_locale
from babel.dates import format_date, format_datetime
from babel.messages.catalog import Catalog
from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po

from service.cards.second.phrasebook import Phrasebook
from service.cards.words import lower_first
from service.languages.catalogue import LOCALE, is_reviewed, load_phrasebook
from service.records.museum.language import Language

FILE_NAME = "pages.po"
ENGLISH = "en"
_LOCALE_OF = {ENGLISH: "en_GB"}
"""English pages write days as cards do, the day before the month."""


@dataclass(frozen=True, slots=True)
class PageWords:
    """How pages speak one language.

    Attributes:
        code: The language (BCP 47).
        messages: Its catalogue; what it lacks stays English.
        known: The English of everything that the catalogue has.
        handling: The phrases of handling as cards have them, None where there are none.
        is_reviewed: Whether a specialist has read the catalogue.
    """

    code: str
    messages: gettext.NullTranslations
    known: frozenset[str] = frozenset()
    handling: Phrasebook | None = None
    is_reviewed: bool = True

    def translate(self, english: str) -> str | None:
        """Give the words for English ones, of the page or of handling; None where there are none.

        Templates keep their placeholders.
        """
        if self.code == ENGLISH:
            return english
        if english in self.known:
            return self.messages.gettext(english)
        return (self.handling and say_of_handling(self.handling, english)) or None

    def write_day(self, day: date) -> str:
        """Write a day in words that no order of figures can confuse, such as 14 Oct 2026."""
        return format_date(day, "d MMM y", locale=self._locale)

    def write_moment(self, moment: datetime) -> str:
        """Write a day and time of the clock on the wall of this machine."""
        return format_datetime(moment.astimezone(), "d MMM y, HH:mm", locale=self._locale)

    @property
    def _locale(self) -> Locale:
        return Locale.parse(_LOCALE_OF.get(self.code, self.code))


@cache
def list_page_languages() -> tuple[str, ...]:
    """List the languages that pages can be read in, English first."""
    return (ENGLISH, *sorted(path.parent.name for path in LOCALE.glob(f"*/{FILE_NAME}")))


def choose_language(preferred: Sequence[str]) -> str:
    """Choose among them by what a reader prefers, best first; else English."""
    return negotiate_locale(preferred, list_page_languages(), sep="-") or ENGLISH


@cache
def load_page_words(language: str) -> PageWords:
    """Load the words of a language of the list."""
    path = _path(language)
    if not path.exists():
        return PageWords(language, gettext.NullTranslations())
    content, compiled = path.read_bytes(), BytesIO()
    catalogue = read_po(BytesIO(content), locale=language, abort_invalid=True)
    write_mo(compiled, catalogue)
    compiled.seek(0)
    return PageWords(
        language,
        gettext.GNUTranslations(compiled),
        frozenset(_list_known(catalogue)),
        load_phrasebook(Language(language)) if language in set(Language) else None,
        is_reviewed(content),
    )


def say_of_handling(phrasebook: Phrasebook, words: str) -> str:
    """Give words of handling: a phrase, a hazard in its state, whom to ask, or a limit.

    They are empty where the phrasebook has none.
    """
    ways = (phrasebook.say, phrasebook.say_hazard, phrasebook.say_asking, phrasebook.say_limit)
    found = next(filter(None, (way(words) for way in ways)), "")
    if found or not words[:1].islower():
        return found
    # Within a sentence phrases begin with a small letter; catalogues have them as cards do.
    return lower_first(say_of_handling(phrasebook, words[:1].upper() + words[1:]))


def _list_known(catalogue: Catalog) -> Iterator[str]:
    for message in catalogue:
        if message.id and message.string and not message.fuzzy and isinstance(message.id, str):
            yield message.id


def _path(language: str) -> Path:
    return LOCALE / language / FILE_NAME
