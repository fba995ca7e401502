"""A name as it is written: runs of digits and of letters, and what stands between them."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass

# What the service can open; other files beside the photos show nothing.
_ENDING = re.compile(r"\.(?:jpe?g|jpe|png|hei[cf]|webp|tiff?|avif|gif|bmp)$", re.IGNORECASE)
_RUN = re.compile(r"\d+|[^\W\d_]+")

# The longest name that common file systems hold; from memory.
_LONGEST_NAME = 255


@dataclass(frozen=True, slots=True)
class Written:
    """A text cut into runs.

    Attributes:
        text: The text in composed form (NFC).
        key: The runs without case and leading zeros, by which numbers are compared.
        raw: The runs without case only.
        gaps: What stands before each run; empty where two runs touch.
        spans: Where each run begins and ends in the text.
    """

    text: str
    key: tuple[str, ...]
    raw: tuple[str, ...]
    gaps: tuple[str, ...]
    spans: tuple[tuple[int, int], ...]

    def between(self, start: int, stop: int) -> str:
        """Give the text of the runs from `start` to `stop`, which is not included."""
        return self.text[self.spans[start][0] : self.spans[stop - 1][1]]


def read_written(text: str) -> Written:
    """Cut a text into its runs."""
    composed = unicodedata.normalize("NFC", text)
    spans = tuple(match.span() for match in _RUN.finditer(composed))
    raw = tuple(composed[start:stop].casefold() for start, stop in spans)
    ends = (0, *(stop for _start, stop in spans))
    gaps = tuple(composed[end:start] for end, (start, _stop) in zip(ends, spans, strict=False))
    return Written(composed, tuple(map(_count, raw)), raw, gaps, spans)


def trim_ending(name: str) -> str:
    """Take the ending off a picture's name; empty where it is no picture's, hidden or endless."""
    stem = _ENDING.sub("", name)
    if stem == name or name.startswith(".") or len(name) > _LONGEST_NAME:
        return ""
    return _ENDING.sub("", stem)


def _count(run: str) -> str:
    if not run.isdecimal():
        return run
    digits = run if run.isascii() else "".join(str(int(digit)) for digit in run)
    return digits.lstrip("0") or "0"
