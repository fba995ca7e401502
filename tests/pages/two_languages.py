"""Cards in two languages, made by hand and fitted."""

from __future__ import annotations

from service.cards.card import Card
from service.cards.kinds import CARD_KINDS, compose_cards
from service.cards.second.phrasebook import Phrasebook
from service.contents.packing import Packing
from service.geometry import Size
from service.pages.fit import Fitting, fit_card
from service.pages.page import Page
from service.pages.ruler import Ruler
from service.pages.setting.give_way import in_english
from tests.cards.second.made import MADE_UP
from tests.contents.made import MUSEUM
from tests.pages.made import PLAIN


def bilingual(made: Packing, kind: str, book: Phrasebook = MADE_UP) -> Card:
    """Compose the first card of a kind in two languages."""
    cards = compose_cards(made, MUSEUM, kinds=CARD_KINDS, phrasebook=book)
    return next(card for card in cards if card.kind == kind)


def fit_both(card: Card, size: Size, ruler: Ruler = PLAIN) -> tuple[list[Page], list[Page]]:
    """Fit a card in both languages, and the same card in English alone."""
    fitting = Fitting(ruler)
    english = fit_card(in_english(card), size, fitting)
    return list(fit_card(card, size, fitting)), list(english)
