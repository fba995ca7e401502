"""What different computers write for one text: examples of UAX #15, figures 3 to 6, from memory.

Rows are source, NFC, NFKC. A title is kept composed (NFC), and found whichever way it is typed.
"""

from __future__ import annotations

import pytest

from service.records.photos.written import read_written
from service.records.rows.text import tidy_text
from service.store.lists.words import split_words

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
