"""What different computers write for one text: UAX #15, Unicode Normalization Forms.

A title is kept composed (NFC), and found whichever way it is typed. Sources: figures 3 to 6 of the
annex, from memory (source, NFC, NFKC); and every line of NormalizationTest.txt of the Unicode
Character Database (source, NFC, NFD, NFKC, NFKD), where the package `unicode-data` is installed.
"""

from __future__ import annotations

import bz2
import os
import unicodedata
from collections.abc import Iterable
from pathlib import Path

import pytest

from service.records.photos.written import read_written
from service.records.rows.text import tidy_text
from service.store.lists.words import split_words

PUBLISHED = Path("/usr/share/unicode/NormalizationTest.txt.bz2")

ROWS = {
    # Figure 3, singletons.
    "angstrom sign": ("\u212b", "\u00c5", "\u00c5"),
    "ohm sign": ("\u2126", "\u03a9", "\u03a9"),
    # Figure 4, canonical composites.
    "a with ring": ("A\u030a", "\u00c5", "\u00c5"),
    "o with circumflex": ("o\u0302", "\u00f4", "\u00f4"),
    # Figure 5, several combining marks, in whichever order they were typed.
    "s with dots below and above": ("s\u0323\u0307", "\u1e69", "\u1e69"),
    "s with dots above and below": ("s\u0307\u0323", "\u1e69", "\u1e69"),
    "d with a dot above, then below": ("\u1e0b\u0323", "\u1e0d\u0307", "\u1e0d\u0307"),
    "q with dots above and below": ("q\u0307\u0323", "q\u0323\u0307", "q\u0323\u0307"),
    # Figure 6, compatibility composites: a title keeps what was written, a search does not mind.
    "fi ligature": ("\ufb01", "\ufb01", "fi"),
    "two to the fifth": ("2\u2075", "2\u2075", "25"),
    "long s with dots": ("\u1e9b\u0323", "\u1e9b\u0323", "\u1e69"),
}


@pytest.mark.parametrize(("source", "composed", "_folded"), ROWS.values(), ids=ROWS)
def test_texts_are_kept_composed(source: str, composed: str, _folded: str) -> None:
    """Two computers that write one title in two ways give one record; written again it stays."""
    assert tidy_text(source) == tidy_text(composed) == composed
    assert read_written(source).text == composed


@pytest.mark.parametrize(("source", "composed", "folded"), ROWS.values(), ids=ROWS)
def test_texts_are_found_however_they_are_typed(source: str, composed: str, folded: str) -> None:
    """The words of a search are the same for the source and for either form of it."""
    wanted = split_words(f"x{folded}y")
    assert wanted
    assert split_words(f"x{source}y") == split_words(f"x{composed}y") == wanted


def test_every_published_line_is_kept_composed() -> None:
    """Of each line the first three forms are kept as the second, and the others as the fourth."""
    wrong = [
        line
        for line in read_published()
        if {kept(text) for text in line[:3]} != {line[1].strip()}
        or {kept(text) for text in line[3:]} != {line[3].strip()}
    ]
    assert wrong == []


def test_every_published_line_is_found_however_it_is_typed() -> None:
    """The words of a search are the same for all five forms of a line."""
    wrong = [
        line
        for line in read_published()
        if len({tuple(split_words(f"x{text}y")) for text in line}) > 1
    ]
    assert wrong == []


def kept(text: str) -> str:
    """Give a text as a record keeps it."""
    tidy = tidy_text(text)
    assert tidy == read_written(text).text.strip()
    return tidy


def read_published() -> list[list[str]]:
    """Read the lines of the published file whose characters this Python knows."""
    if not PUBLISHED.exists():
        # A skip would hide there what CI is to see.
        skip = pytest.fail if os.environ.get("CI") else pytest.skip  # noqa: TID251 - tests may look
        skip(f"There is no {PUBLISHED}: install the package unicode-data.")
    with bz2.open(PUBLISHED, "rt", encoding="utf-8") as file:
        lines = list(read_lines(file))
    known = [line for line in lines if all(map(is_known, line[0]))]
    # The file of Unicode 15.0 has 19,074 lines, of which a Python with 14.0 knows all but 82.
    assert len(known) > 18_900
    assert len(lines) - len(known) < 200
    return known


def read_lines(file: Iterable[str]) -> Iterable[list[str]]:
    """Give the five forms of each line that is neither a comment nor the head of a part."""
    for line in file:
        if line[0] not in "#@\n":
            forms = line.split(";")[:5]
            yield ["".join(chr(int(code, 16)) for code in form.split()) for form in forms]


def is_known(sign: str) -> bool:
    """Tell whether this Python has a character; those of later versions are left out."""
    return unicodedata.category(sign) != "Cn"
