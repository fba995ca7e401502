"""Fits a side card: number and handling as on a lid card, the contents as a list in columns."""

from __future__ import annotations

from service.cards.card import SideCard
from service.geometry import Size
from service.pages.lid.lists import fit_lists
from service.pages.page import Page
from service.pages.ruler import Ruler


def fit_side_card(card: SideCard, size: Size, ruler: Ruler) -> tuple[Page, ...]:
    """Lay a side card out on as many cards as every number needs.

    Raises `DoesNotFitError` when handling alone is higher than a card, `SymbolError` when the QR
    symbol cannot be read at that size.
    """
    return fit_lists(card, size, ruler)
