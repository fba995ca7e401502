"""When a second language gives way: wholly, before anything else of a card does."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from service.cards.card import Card, ContentsList, LidCard
from service.cards.fingerprint import AnyCard
from service.pages.lid.grid import GOOD_MM
from service.pages.page import Page, PictureBlock, TextBlock
from service.pages.setting.second import PURPOSE


def in_english(card: AnyCard) -> AnyCard:
    """Give the card without its words in a second language."""
    return replace(card, head=replace(card.head, second=None))


def has_room(card: Card, both: Sequence[Page], english: Sequence[Page]) -> bool:
    """Tell whether pages in both languages cost nothing that the pages in English show.

    That is a page more, except of a contents list, a picture less, or on a lid card pictures below
    a good size.
    """
    if len(both) > len(english) and not isinstance(card, ContentsList):
        return False
    after, before = _pictures_mm(both), _pictures_mm(english)
    least_mm = min((*before, GOOD_MM)) if isinstance(card, LidCard) else 0.0
    return len(after) == len(before) and all(side_mm >= least_mm for side_mm in after)


def says_all(card: Card, pages: Sequence[Page]) -> bool:
    """Tell whether nothing that the card says in a second language had to give way."""
    return card.head.second is None or any(
        isinstance(block, TextBlock) and block.purpose == PURPOSE
        for page in pages
        for block in page.blocks
    )


def _pictures_mm(pages: Sequence[Page]) -> list[float]:
    """Measure the short side of every picture."""
    return [
        min(block.rect.width_mm, block.rect.height_mm)
        for page in pages
        for block in page.blocks
        if isinstance(block, PictureBlock)
    ]
