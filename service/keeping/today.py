"""What the cards of some containers would say if they were printed now.

Cards are worded from the store exactly as a print run words them: with the hazards that guidance
presumes, photos by the SHA-256 of their files, so that another picture under the same name is
another card, and characters no shipped font holds as codes.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from service.cards.card import Card
from service.cards.kinds import KEPT_KINDS, compose_cards, kinds_for
from service.contents.arrange import arrange_packings
from service.contents.packing import Packing
from service.errors import ServiceError
from service.handling.hazards import reword_hazards
from service.handling.presume import presume_hazards
from service.languages.catalogue import load_phrasebook
from service.pages.ruler import Ruler
from service.pipeline.options import CardKey, card_key
from service.pipeline.printable import replace_missing
from service.records.record import Collection, Museum, ObjectRecord, PhotoReference
from service.store.handles import Connection
from service.store.load_records import load_collection, load_objects
from service.store.shelf.photos import StoredPhoto, find_photo_files


@dataclass(frozen=True, slots=True)
class Printable:
    """Records as a run prints them, and the stored file behind each photo they name."""

    collection: Collection
    photos: Mapping[str, StoredPhoto]


@dataclass(frozen=True, slots=True)
class Today:
    """The cards as of now, and why those of some containers cannot be worded.

    `cards` holds what is printed on request too; `standing` names those a container should have.
    `packings` are what the cards are worded from, by container.
    """

    cards: Mapping[CardKey, Card]
    standing: frozenset[CardKey]
    failed: Mapping[str, ServiceError]
    packings: Mapping[str, Packing]
    museum: Museum

    @property
    def standing_cards(self) -> tuple[Card, ...]:
        """The cards that the containers should have, in the order of printing."""
        return tuple(card for key, card in self.cards.items() if key in self.standing)


def load_printable(
    connection: Connection,
    container_numbers: Sequence[str] | None = None,
    *,
    tagged: Iterable[str] = (),
) -> Printable:
    """Load all that the cards of some containers need, of all of them where none are named.

    The records of `tagged` objects come too, wherever they lie; unknown numbers give nothing.
    """
    collection = load_collection(connection, container_numbers)
    loaded = {one.object_number for one in collection.objects}
    others = load_objects(connection, [one for one in tagged if one not in loaded])
    collection = replace(collection, objects=(*collection.objects, *others))
    found = find_photo_files(connection, [one.object_number for one in collection.objects])
    objects = tuple(
        _name_files(one, found.get(one.object_number, ())) for one in collection.objects
    )
    photos = {photo.stored_name: photo for some in found.values() for photo in some}
    return Printable(replace(collection, objects=objects), photos)


def word_hazards(collection: Collection) -> Collection:
    """Give records with the hazards that print: those presumed too, in the museum's words."""
    presumed, _ = presume_hazards(collection)
    return reword_hazards(presumed)


def compose_today(
    connection: Connection, ruler: Ruler, container_numbers: Sequence[str] | None = None
) -> Today:
    """Word every card of some containers, of all of them where none are named."""
    loaded = load_printable(connection, container_numbers)
    collection, _ = replace_missing(word_hazards(loaded.collection), ruler)
    second = load_phrasebook(collection.museum.second_language)
    wanted = None if container_numbers is None else set(container_numbers)
    cards: dict[CardKey, Card] = {}
    standing: set[CardKey] = set()
    failed: dict[str, ServiceError] = {}
    packings: dict[str, Packing] = {}
    for packing in arrange_packings(collection).packings:
        number = packing.container.container_number
        if wanted is not None and number not in wanted:
            continue
        packings[number] = packing
        try:
            composed = compose_cards(
                packing, collection.museum, kinds=KEPT_KINDS, phrasebook=second
            )
        except ServiceError as error:
            failed[number] = error
        else:
            cards.update((card_key(card), card) for card in composed)
            always = {kind.code for kind in kinds_for(packing)}
            standing.update(card_key(card) for card in composed if card.kind in always)
    return Today(cards, frozenset(standing), failed, packings, collection.museum)


def _name_files(record: ObjectRecord, photos: Sequence[StoredPhoto]) -> ObjectRecord:
    """Name the photos that have been brought by their files; the others cannot be printed."""
    brought = tuple(PhotoReference(photo.stored_name, photo.role) for photo in photos)
    return record if record.photos == brought else replace(record, photos=brought)
