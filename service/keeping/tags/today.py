"""What the tags of some objects would say if they were printed now.

They are worded from the records exactly as a print run words them; where an object lies is on none.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from service.cards.card import Card, ObjectTag
from service.cards.compose.asked.object_tag import compose_object_tag
from service.cards.second.add import add_second_words
from service.errors import ServiceError
from service.keeping.today import word_hazards
from service.languages.catalogue import load_phrasebook
from service.pages.ruler import Ruler
from service.pipeline.options import CardKey, card_key
from service.pipeline.printable import replace_missing
from service.records.record import Collection
from service.store.handles import Connection
from service.store.load_records import load_museum, load_objects


@dataclass(frozen=True, slots=True)
class TodayTags:
    """The tags as of now, and why those of some objects cannot be worded."""

    cards: Mapping[CardKey, Card]
    failed: Mapping[str, ServiceError]


def compose_today_tags(
    connection: Connection, ruler: Ruler, object_numbers: Sequence[str]
) -> TodayTags:
    """Word the tags of some objects, packed or not; an unknown number gives nothing."""
    objects = tuple(load_objects(connection, object_numbers))
    worded = word_hazards(Collection(load_museum(connection), objects))
    collection, _ = replace_missing(worded, ruler)
    second = load_phrasebook(collection.museum.second_language)
    cards: dict[CardKey, Card] = {}
    failed: dict[str, ServiceError] = {}
    for record in collection.objects:
        try:
            tag = compose_object_tag(record, collection.museum)
        except ServiceError as error:
            failed[record.object_number] = error
        else:
            cards[card_key(tag)] = add_second_words(tag, second) if second else tag
    return TodayTags(cards, failed)


def compose_tag(connection: Connection, ruler: Ruler, object_number: str) -> ObjectTag | None:
    """Word the tag of one object; None where there is no such object, or nothing can be worded."""
    cards = compose_today_tags(connection, ruler, [object_number]).cards.values()
    return next((card for card in cards if isinstance(card, ObjectTag)), None)
