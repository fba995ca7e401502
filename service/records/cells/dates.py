"""Dates as people write them, refused where day and month could be exchanged."""

from __future__ import annotations

import re
from datetime import date

from service.records.rows.cell import Cell
from service.records.rows.text import means_nothing, quote_text
from service.sentence import Sentence

_MONTHS = {
    name: number
    for number, names in enumerate(
        (
            "jan january",
            "feb february",
            "mar march",
            "apr april",
            "may",
            "jun june",
            "jul july",
            "aug august",
            "sep sept september",
            "oct october",
            "nov november",
            "dec december",
        ),
        start=1,
    )
    for name in names.split()
}
_YEAR_FIRST = re.compile(r"(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ][0-9:.+Z-]*)?", re.ASCII)
_YEAR_LAST = re.compile(r"(\d{1,2})[-/. ](\d{1,2})[-/. ](\d{4})", re.ASCII)
_DAY_NAME_YEAR = re.compile(
    r"(\d{1,2})(?:st|nd|rd|th)?[-. ]+([a-z]+)[-., ]+(\d{4})", re.ASCII | re.IGNORECASE
)
_NAME_DAY_YEAR = re.compile(
    r"([a-z]+)[. ]+(\d{1,2})(?:st|nd|rd|th)?,? +(\d{4})", re.ASCII | re.IGNORECASE
)
_MONTHS_IN_A_YEAR = 12


def parse_date(text: str) -> date | None:
    """Give the day a text names; None where it names none, or could name two."""
    if match := _YEAR_FIRST.fullmatch(text):
        return _make_date(int(match[1]), int(match[2]), int(match[3]))
    if match := _YEAR_LAST.fullmatch(text):
        return _from_two_numbers(int(match[1]), int(match[2]), year=int(match[3]))
    if match := _DAY_NAME_YEAR.fullmatch(text):
        return _make_date(int(match[3]), _MONTHS.get(match[2].casefold(), 0), int(match[1]))
    if match := _NAME_DAY_YEAR.fullmatch(text):
        return _make_date(int(match[3]), _MONTHS.get(match[1].casefold(), 0), int(match[2]))
    return None


def is_unclear_date(text: str) -> bool:
    """Tell whether a text gives day and month as numbers that could be exchanged."""
    match = _YEAR_LAST.fullmatch(text)
    return match is not None and parse_date(text) is None and _both_could_be_months(match)


def read_date(cell: Cell) -> date | None:
    """Read a date; None where the cell is empty or was not understood."""
    text = cell.text
    if means_nothing(text):
        return None
    day = parse_date(text)
    if day is None:
        reason = (
            Sentence("could be two different days")
            if is_unclear_date(text)
            else Sentence("is not a date")
        )
        cell.note(
            "unreadable-date",
            Sentence("{text} {reason}; it was left out.", text=quote_text(text), reason=reason),
        )
    return day


def _both_could_be_months(match: re.Match[str]) -> bool:
    return all(1 <= int(number) <= _MONTHS_IN_A_YEAR for number in match.groups()[:2])


def _from_two_numbers(first: int, second: int, *, year: int) -> date | None:
    if first > _MONTHS_IN_A_YEAR or first == second:
        return _make_date(year, second, first)
    if second > _MONTHS_IN_A_YEAR:
        return _make_date(year, first, second)
    return None


def _make_date(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None
