"""Measures of sheets as people type them: `63.5 mm`, `2.625 in`, `2 5/8 in`, or bare numbers."""

from __future__ import annotations

import re

from service.units import mm_from_inches

UNITS = ("mm", "in")

# Digits are few on purpose: what is longer is no measure of a sheet.
_MEASURE = re.compile(
    r"""
    (?: (?P<decimal>[0-9]{1,6}(?:[.,][0-9]{1,9})?)
      | (?:(?P<whole>[0-9]{1,6})\s+)?(?P<upper>[0-9]{1,4})/(?P<lower>[1-9][0-9]{0,3})
    )
    \s*(?P<unit>mm|in)?
    """,
    re.VERBOSE | re.IGNORECASE,
)
_LARGEST = 1_000_000
_LONGEST_QUOTE = 60


def read_length_mm(value: object, *, unit: str) -> float:
    """Read a length; a number without a unit counts in `unit`, "" when there is none.

    Raises:
        ValueError: With a reason that reads on from the name of the measure.
    """
    if isinstance(value, int | float) and not isinstance(value, bool):
        return _in_mm(_bounded(value), unit, typed=value)
    match = _MEASURE.fullmatch(value.strip()) if isinstance(value, str) else None
    if match is None:
        msg = f"cannot be read: {_shown(value)}; write for instance 63.5 mm or 2 5/8 in"
        raise ValueError(msg)
    return _in_mm(_number_of(match), match["unit"] or unit, typed=value)


def read_count(value: object) -> int:
    """Read a whole number of columns or rows, typed as a number or as text.

    Raises:
        ValueError: With a reason that reads on from the name of the measure.
    """
    if isinstance(value, int) and not isinstance(value, bool):
        return value
    if isinstance(value, str) and re.fullmatch(r"\s*[0-9]{1,6}\s*", value):
        return int(value)
    msg = f"is no whole number: {_shown(value)}"
    raise ValueError(msg)


def _shown(value: object) -> str:
    """Quote what was typed, cut where it would fill a message."""
    return repr(value)[:_LONGEST_QUOTE]


def _bounded(number: float) -> float:
    if abs(number) > _LARGEST:
        msg = "is too large"
        raise ValueError(msg)
    return float(number)


def _number_of(match: re.Match[str]) -> float:
    if match["decimal"]:
        return float(match["decimal"].replace(",", "."))
    return int(match["whole"] or 0) + int(match["upper"]) / int(match["lower"])


def _in_mm(number: float, unit: str, *, typed: object) -> float:
    if not unit:
        msg = f"has no unit: {_shown(typed)}; write for instance 63.5 mm"
        raise ValueError(msg)
    return mm_from_inches(number) if unit.lower() == "in" else number
