"""The ruler: how wide a text is, and where its lines break.

The one seam between the pure fit and the world of fonts: the real one shapes with the same engine
and the same files as the ink.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

from service.pages.page import Direction, TextStyle


@dataclass(frozen=True, slots=True)
class BrokenText:
    """A text broken into lines, their widths in mm, and the base direction of the text."""

    lines: tuple[str, ...]
    widths_mm: tuple[float, ...]
    direction: Direction

    @property
    def width_mm(self) -> float:
        """The width of the longest line."""
        return max(self.widths_mm, default=0.0)


class Ruler(Protocol):
    """Measures text as it will be printed."""

    def break_text(self, text: str, style: TextStyle, *, width_mm: float) -> BrokenText:
        """Break a text into lines no wider than `width_mm`.

        A word longer than the line is broken inside. Joined again, the lines give the text, but
        for the blanks at the breaks.
        """
        ...

    def width_mm(self, text: str, style: TextStyle) -> float:
        """Give the advance width of a text set on one line."""
        ...

    def missing_characters(self, text: str) -> tuple[str, ...]:
        """Name the characters of a text that no shipped font holds, each once, in order."""
        ...
