"""A message catalogue as a file: gettext's PO, with a field that says whether it was reviewed."""

from __future__ import annotations

import re
from functools import cache
from io import BytesIO
from pathlib import Path

from babel.messages.pofile import read_po

from service.cards.second.phrasebook import Phrasebook
from service.records.museum.language import LANGUAGE_NAMES, Language

LOCALE = Path(__file__).parents[2] / "templates" / "locale"
FILE_NAME = "handling.po"
_REVIEWED = re.compile(rb'^"X-Reviewed: yes\\n"\r?$', re.MULTILINE)


@cache
def load_phrasebook(language: Language) -> Phrasebook | None:
    """Load the phrasebook of a language that ships; none for English alone.

    Raises `PoFileError` of Babel when the file is damaged, `OSError` when it is not there.
    """
    if language is Language.NONE:
        return None
    return read_phrasebook(language, catalogue_path(language).read_bytes())


def catalogue_path(language: Language) -> Path:
    """Say where the catalogue of a language lies."""
    return LOCALE / language.value / FILE_NAME


def read_phrasebook(language: Language, content: bytes) -> Phrasebook:
    """Read a catalogue; a message that is empty or marked fuzzy is one without a translation.

    It counts as reviewed only where its head holds the field `X-Reviewed: yes`. Raises
    `PoFileError` of Babel when it is no catalogue.
    """
    catalogue = read_po(BytesIO(content), locale=language.value, abort_invalid=True)
    messages = {
        str(message.id): str(message.string)
        for message in catalogue
        if message.id and message.string and not message.fuzzy
    }
    return Phrasebook(language.value, LANGUAGE_NAMES[language], is_reviewed(content), messages)


def is_reviewed(content: bytes) -> bool:
    """Tell whether the head of a catalogue says that a specialist has read it."""
    return _REVIEWED.search(content) is not None
