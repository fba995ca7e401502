"""The words by which a record is found: folded, so that accents, case and separators are no matter.

Both databases get plain words between blanks, so that neither takes them apart in its own way.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable

from service.handling.hazards import find_hazard
from service.records.record import ContainerRecord, ObjectRecord

_WORD = re.compile(r"[^\W_]+")
_MARKS = re.compile(r"[\u0300-\u036f]")


def words_of_object(record: ObjectRecord) -> str:
    """Give the words of an object: numbers, title, name, period, materials, hazards."""
    hazards = (find_hazard(hazard.code).name for hazard in record.hazards)
    codes = (hazard.code for hazard in record.hazards)
    texts = (record.title, record.object_name, record.period, *record.materials, *hazards, *codes)
    return _join(texts, (record.object_number, *record.former_numbers))


def words_of_container(record: ContainerRecord) -> str:
    """Give the words of a container: number, kind, title and location."""
    texts = (record.title, record.kind.value, *record.location)
    return _join(texts, (record.container_number,))


def split_words(text: str) -> list[str]:
    """Take a text apart into folded words of letters and figures."""
    # Taken apart first: that may bring capitals (№ is No), and a mark may fold to a letter.
    plain = _MARKS.sub("", unicodedata.normalize("NFKD", text))
    return _WORD.findall(unicodedata.normalize("NFC", plain.casefold()))


def _join(texts: Iterable[str], numbers: Iterable[str]) -> str:
    words = [word for text in texts for word in split_words(text)]
    for number in numbers:
        parts = split_words(number)
        # A number typed without its dots is found as well.
        words += [*parts, "".join(parts)]
    return " ".join(dict.fromkeys(words))
