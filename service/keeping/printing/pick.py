"""Which cards are meant by containers and the kinds that were ticked for them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from service.cards.kinds import OBJECT_TAG
from service.errors import NotFoundError
from service.keeping.reprints import list_reprints
from service.keeping.today import compose_today
from service.pages.ruler import Ruler
from service.pipeline.options import CardKey, object_tag_keys
from service.store.handles import Connection, Engine
from service.store.load_records import load_container


@dataclass(frozen=True, slots=True)
class KindsPicked:
    """Kinds of card, by their codes.

    Attributes:
        usual: Printed for the containers that always get them.
        extra: Printed for whichever container can have them.
    """

    usual: frozenset[str]
    extra: frozenset[str]


def pick_cards(
    connection: Connection, ruler: Ruler, container_numbers: Sequence[str], kinds: KindsPicked
) -> frozenset[CardKey]:
    """Name the cards of containers that are of the kinds picked.

    Raises:
        NotFoundError: When there is no such container.
    """
    for number in container_numbers:
        load_container(connection, number)
    today = compose_today(connection, ruler, container_numbers)
    cards = frozenset(
        key
        for key in today.cards
        if key[1] in kinds.extra or (key[1] in kinds.usual and key in today.standing)
    )
    if OBJECT_TAG.code not in kinds.extra:
        return cards
    return cards | object_tag_keys(
        packed.record.object_number
        for packing in today.packings.values()
        for packed in packing.everything
        if packed.known
    )


def name_lacking(engine: Engine, ruler: Ruler) -> frozenset[CardKey]:
    """Name the cards that containers lack; what is printed already only has to be attached.

    Raises:
        NotFoundError: When there are none.
    """
    lacking = list_reprints(engine, ruler).unattached
    keys = frozenset(
        (one.container_number, one.kind, one.side) for one in lacking if not one.is_made
    )
    if not keys:
        name = "list of what is missing"
        raise NotFoundError(name, what="card on the")
    return keys
