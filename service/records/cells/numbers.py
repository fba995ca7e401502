"""Numbers as people write them: decimal points and commas, fractions, blanks between."""

from __future__ import annotations

import re
import unicodedata

_VULGAR = "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"

NUMBER = (
    r"(?:[0-9]{1,3}(?:,[0-9]{3})+\.[0-9]+"
    r"|[0-9]+[ \u00a0-]+[0-9]+[/\u2044][0-9]+"
    r"|[0-9]+[/\u2044][0-9]+"
    rf"|[0-9]*[ \u00a0]?[{_VULGAR}]"
    r"|[0-9]*[.,][0-9]+"
    r"|[0-9]+)"
)
"""A regular expression for one number without a sign."""

_MIXED = re.compile(r"(?:([0-9]+)[ \u00a0-]+)?([0-9]+)[/\u2044]([0-9]+)")
_MIXED_VULGAR = re.compile(rf"([0-9]*)[ \u00a0]?([{_VULGAR}])")
_GROUPED = re.compile(r"[0-9]{1,3}(?:,[0-9]{3})+\.[0-9]+")
_COMMA_UNCLEAR = re.compile(r"[1-9][0-9]{0,2},[0-9]{3}")
_DIGITS_LIMIT = 15


def parse_number(text: str) -> float | None:
    """Give the value of a number that matches `NUMBER`; None where it cannot be told.

    A comma before exactly three digits may part thousands or be a decimal comma. Since the two
    differ by a factor of a thousand, such a number counts as not understood.
    """
    if len(text) > 2 * _DIGITS_LIMIT or _COMMA_UNCLEAR.fullmatch(text):
        return None
    if match := _MIXED.fullmatch(text):
        whole, top, bottom = (int(group or 0) for group in match.groups())
        return whole + top / bottom if bottom else None
    if match := _MIXED_VULGAR.fullmatch(text):
        return float(match[1] or 0) + unicodedata.numeric(match[2])
    if _GROUPED.fullmatch(text):
        return float(text.replace(",", ""))
    return float(text.replace(",", "."))
