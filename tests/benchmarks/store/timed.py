"""What is measured of the store, and how."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Measured:
    """How long something took, and the least that others took for the same; None without a floor.

    The least is what SQL takes, or for pictures what PDFium takes.
    """

    what: str
    seconds: float
    floor_seconds: float | None = None


def timed(work: Callable[[], object]) -> float:
    """Give how many seconds some work took."""
    began = time.perf_counter()
    work()
    return time.perf_counter() - began
