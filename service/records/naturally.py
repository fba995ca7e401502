"""Natural order of numbers: `1987.412.9` before `1987.412.10` before `1987.412.10a`."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TypeVar

from natsort import natsort_keygen, ns

T = TypeVar("T")

_natural = natsort_keygen(alg=ns.INT | ns.IGNORECASE)


def natural_key(number: str) -> tuple[object, str]:
    """Give a key that sorts numbers as a person would; equal only for equal strings.

    Digits count by their value and letters without their case; the string itself breaks ties, so
    that the order is total.
    """
    return (_natural(number), number)


def sort_naturally(items: Iterable[T], *, number: Callable[[T], str]) -> list[T]:
    """Sort items by their number in natural order."""
    return sorted(items, key=lambda item: natural_key(number(item)))
