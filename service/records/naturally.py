"""Natural order of numbers: `1987.412.9` before `1987.412.10` before `1987.412.10a`."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TypeVar

from natsort import natsort_keygen, ns

T = TypeVar("T")

_END = "\x01"

_natural = natsort_keygen(alg=ns.INT | ns.IGNORECASE)


def natural_key(number: str) -> tuple[object, str]:
    """Give a key that sorts numbers as a person would; equal only for equal strings.

    Digits count by their value and letters without their case; the string itself breaks ties, so
    that the order is total.
    """
    return (_natural(number), number)


def natural_text(number: str) -> str:
    """Give a text that sorts, character by character, as `natural_key` does.

    A number of digits stands behind the count of its digits; a sign that sorts before all others
    ends each piece, and the number itself breaks ties.
    """
    pieces = (
        f"{len(str(piece)):04d}{piece}" if isinstance(piece, int) else f"{piece}{_END}"
        for piece in _natural(number)
    )
    return "".join((*pieces, _END, number))


def sort_naturally(items: Iterable[T], *, number: Callable[[T], str]) -> list[T]:
    """Sort items by their number in natural order."""
    return sorted(items, key=lambda item: natural_key(number(item)))
