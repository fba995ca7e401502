"""Where the museum is."""

from __future__ import annotations

from enum import StrEnum


class Region(StrEnum):
    """Where the museum is, as far as it decides whom to consult."""

    UK = "uk"
    US = "us"
    ELSEWHERE = "elsewhere"
