"""The museum's own first precautions."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class HazardWords:
    """What is printed as the first precaution of a hazard instead of the usual words."""

    code: str
    instruction: str
