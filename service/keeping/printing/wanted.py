"""What a print run is made from: the records of the containers asked for, and their photos."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from service.cards.kinds import OBJECT_TAG
from service.errors import NotFoundError
from service.keeping.desk import Desk
from service.keeping.photos.shown import find_source
from service.keeping.today import Printable, load_printable
from service.pipeline.options import PrintOptions
from service.records.record import Collection
from service.render.pictures.prepare import PhotoSource
from service.store.open import reading


@dataclass(frozen=True, slots=True)
class Wanted:
    """Records, the file of each photo they name, and options that name no other container."""

    collection: Collection
    photos: Mapping[str, PhotoSource]
    options: PrintOptions


def load_wanted(desk: Desk, options: PrintOptions) -> Wanted:
    """Load what the cards asked for need, and nothing else.

    Raises:
        NotFoundError: When the tag of an object is asked for that is not in the store.
    """
    options = _narrowed(options)
    containers = sorted(options.containers) if options.only or options.containers else None
    tagged = sorted(number for number, kind, _ in options.only if kind == OBJECT_TAG.code)
    with reading(desk.engine) as connection:
        loaded = load_printable(connection, containers, tagged=tagged)
    _refuse_unknown(tagged, loaded)
    sources = {name: find_source(desk.shelf, photo) for name, photo in loaded.photos.items()}
    return Wanted(loaded.collection, sources, options)


def _narrowed(options: PrintOptions) -> PrintOptions:
    """Name the containers of the cards asked for, so that no other is loaded."""
    if not options.only:
        return options
    numbers = frozenset(number for number, kind, _ in options.only if kind != OBJECT_TAG.code)
    return replace(options, containers=numbers)


def _refuse_unknown(tagged: Sequence[str], loaded: Printable) -> None:
    """Refuse the tag of an object without a record.

    Raises:
        NotFoundError: When there is one.
    """
    known = {one.object_number for one in loaded.collection.objects}
    for number in tagged:
        if number not in known:
            raise NotFoundError(number, what="object")
