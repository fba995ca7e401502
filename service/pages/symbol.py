"""Places a card's QR symbol: as large as wanted, never below what a telephone reads."""

from __future__ import annotations

from service.cards.compose.head import full_payload
from service.cards.parts import Head
from service.geometry import Rect
from service.pages.page import SymbolBlock
from service.printed import to_print
from service.symbols.symbol import Level, encode_symbol, size_symbol

RESOLUTION_DPI = 600.0
"""Office laser printers draw 600 dots to the inch; 12 dots are 0.508 mm."""


def set_symbol(
    head: Head, *, right_mm: float, top_mm: float, space_mm: float, level: Level = Level.M
) -> SymbolBlock:
    """Set the symbol so that its dark part ends at `right_mm` and begins at `top_mm`.

    Its clear margin may lie in the margin of the card. Raises `SymbolError` when it cannot be read
    at that size.
    """
    payload = full_payload(head)
    symbol = encode_symbol(payload, level=level)
    size = size_symbol(symbol, space_mm=space_mm, resolution_dpi=RESOLUTION_DPI)
    clear_mm = size.quiet_zone_modules * size.module_mm
    rect = Rect(right_mm - size.side_mm + clear_mm, top_mm - clear_mm, size.side_mm, size.side_mm)
    return SymbolBlock(
        "symbol",
        rect,
        symbol,
        size.module_mm,
        size.quiet_zone_modules,
        to_print("QR code: {payload}", payload=payload),
    )


def dark_part(block: SymbolBlock) -> Rect:
    """Give the rectangle of a symbol without its clear margin."""
    clear_mm = block.quiet_zone_modules * block.module_mm
    rect = block.rect
    return Rect(
        rect.x_mm + clear_mm,
        rect.y_mm + clear_mm,
        rect.width_mm - 2 * clear_mm,
        rect.height_mm - 2 * clear_mm,
    )
