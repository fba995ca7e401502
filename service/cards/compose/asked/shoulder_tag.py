"""The shoulder tag: which cover hangs here, read from its edge without pulling it out."""

from __future__ import annotations

from service.cards.card import ShoulderTag
from service.cards.compose.head import compose_head
from service.cards.compose.objects import compose_object, without_photo
from service.cards.compose.warn import gather_hazards
from service.cards.fingerprint import seal_card
from service.contents.packing import Packing
from service.records.record import Museum


def compose_shoulder_tag(packing: Packing, museum: Museum) -> ShoulderTag:
    """Word the shoulder tag of a garment cover; the cover card says all the rest."""
    card = ShoulderTag(
        head=compose_head(packing, museum),
        hazards=gather_hazards(packing.everything),
        objects=tuple(without_photo(compose_object(packed)) for packed in packing.everything),
    )
    return seal_card(card, dated=False)
