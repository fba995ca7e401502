"""Many card numbers in few letters, so that taking a whole run back fits into a notice."""

from __future__ import annotations

from collections.abc import Iterable

_MOST = 100_000
_DIGITS = 10


def write_spans(numbers: Iterable[int]) -> str:
    """Write numbers as spans: 3-7,9."""
    spans: list[list[int]] = []
    for number in sorted(set(numbers)):
        if spans and number == spans[-1][1] + 1:
            spans[-1][1] = number
        else:
            spans.append([number, number])
    return ",".join(str(first) if first == last else f"{first}-{last}" for first, last in spans)


def read_spans(text: str) -> list[int]:
    """Read what `write_spans` wrote; anything else in it is left out."""
    numbers: list[int] = []
    for part in text.split(","):
        first, _, last = part.partition("-")
        if _is_number(first) and _is_number(last or first):
            span = range(int(first), int(last or first) + 1)
            numbers += span[: _MOST - len(numbers)]
    return numbers


def _is_number(text: str) -> bool:
    return text.isascii() and text.isdigit() and len(text) < _DIGITS
