"""The side card: the contents for a side, where nothing may cover the lid or nobody sees it.

It shows no photos: through a clear lid the objects are seen themselves.
"""

from __future__ import annotations

from dataclasses import replace

from service.cards.card import SideCard
from service.cards.compose.head import compose_head
from service.cards.compose.lid_card import compose_layers, write_count
from service.cards.compose.objects import without_photo
from service.cards.compose.warn import warn_outside
from service.cards.fingerprint import seal_card
from service.cards.parts import CardLayer
from service.contents.packing import Packing
from service.records.record import Museum


def compose_side_card(packing: Packing, museum: Museum) -> SideCard:
    """Word the side card of a packing: every object in the order of layers, from the top."""
    card = SideCard(
        head=compose_head(packing, museum),
        handling=warn_outside(packing, museum),
        count_words=write_count(packing),
        layers=tuple(_without_photos(layer) for layer in compose_layers(packing)),
    )
    return seal_card(card, dated=True)


def _without_photos(layer: CardLayer) -> CardLayer:
    return replace(layer, objects=tuple(without_photo(item) for item in layer.objects))
