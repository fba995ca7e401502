"""Cleaning of text: what can be neither seen nor printed goes, everything else stays."""

from __future__ import annotations

import re
import unicodedata

LINE_BREAKS = re.compile(r"\r\n|[\n\r\t\v\f\u2028\u2029]")

# C0 and C1 controls, marks that turn the direction of text (Unicode Standard Annex 9) and byte
# order marks. Zero-width joiners stay, since some scripts cannot be written without them.
_UNSEEN = re.compile("[\x00-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ufeff]")

# Formats, such as joiners without anything to join, and blanks.
_BLANKS = frozenset(("Cf", "Zs"))

_NOTHING = frozenset(
    ("unknown", "not known", "none", "null", "nil", "n/a", "na", "nan", "not recorded", "no data")
)
_SIGNS_FOR_NOTHING = frozenset("?-\u2013—.*/")

QUOTE_LIMIT = 60


def tidy_text(text: str, *, line_break: str = " ") -> str:
    """Compose to NFC, take out unseen characters, and strip blanks at both ends.

    What holds nothing that can be seen is empty.
    """
    if text.isascii() and text.isprintable():
        return text.strip()
    tidy = unicodedata.normalize("NFC", _UNSEEN.sub("", LINE_BREAKS.sub(line_break, text))).strip()
    is_seen = any(unicodedata.category(sign) not in _BLANKS for sign in tidy)
    return tidy if is_seen else ""


def has_unseen(text: str) -> bool:
    """Tell whether `tidy_text` would take out more than blanks and line breaks."""
    return _UNSEEN.search(LINE_BREAKS.sub(" ", text)) is not None


def means_nothing(text: str) -> bool:
    """Tell whether a value is empty or only a word or sign for "not known"."""
    return text.casefold() in _NOTHING or set(text) <= _SIGNS_FOR_NOTHING


def quote_text(text: str) -> str:
    """Quote what a person wrote, shortened, for use in a sentence."""
    shown = text if len(text) <= QUOTE_LIMIT else text[:QUOTE_LIMIT] + "…"
    return f"“{shown}”"
