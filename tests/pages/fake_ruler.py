"""A plain ruler: every character is half an em wide, lines break at blanks, long words inside."""

from __future__ import annotations

from service.pages.page import Direction, TextStyle
from service.pages.ruler import BrokenText
from service.units import mm_from_points

WIDTH_RATIO = 0.5
_SLACK_MM = 1e-9


class FakeRuler:
    """Counts characters instead of shaping them."""

    def break_text(self, text: str, style: TextStyle, *, width_mm: float) -> BrokenText:
        """Break greedily into lines no wider than `width_mm`."""
        most = max(1, int((width_mm + _SLACK_MM) / self.width_mm("x", style)))
        lines = _break(text, most)
        widths_mm = tuple(self.width_mm(line, style) for line in lines)
        return BrokenText(lines, widths_mm, Direction.LEFT_TO_RIGHT)

    def width_mm(self, text: str, style: TextStyle) -> float:
        """Give half an em for every character."""
        return len(text) * mm_from_points(style.size_pt) * WIDTH_RATIO

    def missing_characters(self, text: str) -> tuple[str, ...]:
        """Name what lies outside the Basic Multilingual Plane."""
        return tuple(dict.fromkeys(sign for sign in text if ord(sign) > 0xFFFF))


def _break(text: str, most: int) -> tuple[str, ...]:
    lines: list[str] = [""]
    for word in text.split(" "):
        joined = f"{lines[-1]} {word}" if lines[-1] else word
        if len(joined) <= most:
            lines[-1] = joined
            continue
        pieces = [word[start : start + most] for start in range(0, len(word), most)]
        lines[-1:] = [lines[-1], *pieces] if lines[-1] else pieces
    return tuple(lines)
