"""Measures that depend on the size of a card: margins, gaps and room for the symbol."""

from __future__ import annotations

from dataclasses import dataclass

from service.geometry import Insets, Rect, Size

HAIRLINE_MM = 0.2
RULE_MM = 0.5
NEAREST_EDGE_MM = 4.3
"""Ink stays this far from the edge of a card: the unprintable edge of office printers is commonly
1/6 inch (from memory)."""


@dataclass(frozen=True, slots=True)
class Look:
    """The measures of one card size; `symbol_mm` is the room for the symbol, margin included."""

    margin_mm: float
    gap_mm: float
    symbol_mm: float
    title_pt: float
    number_caps_mm: float


_SMALL = Look(5.5, 3.0, 19.0, 11.0, 7.0)
_MIDDLE = Look(6.5, 3.6, 22.5, 13.0, 8.75)
_LARGE = Look(9.0, 5.0, 26.0, 16.0, 11.0)

_SMALL_AREA_MM2 = 20_000.0
_LARGE_AREA_MM2 = 45_000.0


def look_for(size: Size) -> Look:
    """Choose the measures for a finished size: up to A6, up to A5, or larger."""
    area_mm2 = size.width_mm * size.height_mm
    if area_mm2 < _SMALL_AREA_MM2:
        return _SMALL
    return _MIDDLE if area_mm2 < _LARGE_AREA_MM2 else _LARGE


def inner_rect(size: Size, margin_mm: float) -> Rect:
    """Give the rectangle inside equal margins."""
    whole = Rect(0, 0, size.width_mm, size.height_mm)
    return whole.inset(Insets(margin_mm, margin_mm, margin_mm, margin_mm))
