"""The years that the words of a period can mean: "about 1890", "1930s", "19th century"."""

from __future__ import annotations

import re
from dataclasses import dataclass

_ABOUT_YEARS = 10
"""How far "about 1890" reaches on both sides: common practice, no source."""

_EARLIEST, _LATEST = -10_000, 9_999
_YEAR = r"(?<!\d)(?<!\b0[.,])(1[0-9]{3}|20[0-9]{2})"
_RANGE = re.compile(rf"{_YEAR}\s*[-\u2013\u2014/]\s*(\d{{2}}|\d{{4}})(?![\d])")
_SINGLE = re.compile(rf"{_YEAR}('?s\b)?(?!\d)")
_NUMBER = r"(1?\d|2[01])(?:st|nd|rd|th|e|\.)?"
_PART = r"(early|mid|late|(?:first|second|1st|2nd) half(?: of the)?)"
_CENTURY = re.compile(
    rf"(?:{_PART}[\s-]+)?\b{_NUMBER}\s*"
    rf"(?:(?:[-\u2013/]|to|or|and)\s*(?:{_PART}[\s-]+)?{_NUMBER}\s*)?"
    r"(?:century|centuries|cent\b|c\b|si\u00e8cle|jahrhundert|jh\b|eeuw)"
)
_PARTS = {"e": (0, 40), "m": (25, 75), "l": (60, 100), "f": (0, 50), "1": (0, 50)}
"""The years of a century that its early, middle, late part or first half can mean, by initial."""
_SECOND_HALF = (50, 100)
_ABOUT = re.compile(r"\b(?:about|around|approx\w*|circa|ca|c|tua|um|vers)\b|\?|~|\bc(?=1\d{3})")
_BEFORE = re.compile(r"\b(?:before|until|by|up to|no later than|pre)\b|^\s*[-\u2013<]\s*\d")
_AFTER = re.compile(r"\b(?:after|since|post)\b|\b(?:or later|onwards?|to present)\b|>\s*\d")
_BEFORE_CHRIST = re.compile(r"\b(?:bc|bce|b\.c\.)(?!\w)")
_NAMED: dict[str, tuple[int, int]] = {
    # Reigns and wars of British history, from memory.
    "georgian": (1714, 1837),
    "victorian": (1837, 1901),
    "edwardian": (1901, 1910),
    "first world war": (1914, 1918),
    "world war i": (1914, 1918),
    "second world war": (1939, 1945),
    "world war ii": (1939, 1945),
}


@dataclass(frozen=True, slots=True)
class Years:
    """The first and the last year that are meant, both included."""

    first: int
    last: int

    def meets(self, other: Years) -> bool:
        """Tell whether the two have a year in common."""
        return self.first <= other.last and other.first <= self.last


def read_years(text: str) -> Years | None:
    """Read the years a period can mean, rather too many than too few; None where it names none."""
    words = text.casefold().replace("\u2019", "'")
    if _BEFORE_CHRIST.search(words):
        return Years(_EARLIEST, 0)
    found = [*_read_numbers(words), *_read_centuries(words)] or _read_names(words)
    if not found:
        return None
    first, last = min(years.first for years in found), max(years.last for years in found)
    margin = _ABOUT_YEARS if _ABOUT.search(_CENTURY.sub(" ", words)) else 0
    if _BEFORE.search(words):
        return Years(_EARLIEST, last + margin)
    if _AFTER.search(words) and len(found) == 1:
        return Years(first - margin, _LATEST)
    return Years(first - margin, last + margin)


def _read_numbers(words: str) -> list[Years]:
    found = []
    for match in _RANGE.finditer(words):
        end = match[2] if len(match[2]) > 2 else match[1][:2] + match[2]  # noqa: PLR2004 - 1914-18
        if int(end) >= int(match[1]):
            found.append(Years(int(match[1]), int(end)))
    for match in _SINGLE.finditer(words):
        year = int(match[1])
        found.append(Years(year, year + _span_of_plural(year) if match[2] else year))
    return found


def _span_of_plural(year: int) -> int:
    """Give how far "1930s" (to 1939) and "1800s" (to 1899, the wider meaning) reach."""
    return 99 if year % 100 == 0 else 9


def _read_centuries(words: str) -> list[Years]:
    found = []
    for part, first, _, last in _CENTURY.findall(words):
        start, end = (0, 100) if last or not part else _PARTS.get(part[0], _SECOND_HALF)
        before = 100 * (int(first) - 1)
        if last:
            end += 100 * (int(last) - int(first))
        if before >= 0 and end > start:
            found.append(Years(before + start + 1, before + end))
    return found


def _read_names(words: str) -> list[Years]:
    return [Years(*years) for name, years in _NAMED.items() if re.search(rf"\b{name}\b", words)]
