"""Fits any card: the one door to the fit of each kind."""

from __future__ import annotations

from service.cards.card import Card, LidCard
from service.geometry import Size
from service.pages.lid_card import fit_lid_card
from service.pages.page import Page
from service.pages.ruler import Ruler


def fit_card(card: Card, size: Size, ruler: Ruler) -> tuple[Page, ...]:
    """Lay a card out at a finished size, on as many pages as it needs.

    Raises `LayoutError` when a block is larger than a page, `SymbolError` when the QR symbol
    cannot be read at that size.
    """
    if isinstance(card, LidCard):
        return fit_lid_card(card, size, ruler)
    raise ValueError(card.kind)
