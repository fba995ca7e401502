"""Checks how a container of a store is packed now, with the cards that are on it."""

from __future__ import annotations

from datetime import date

from service.contents.arrange import arrange_packings
from service.findings import Finding
from service.handling.packing.check import check_packing
from service.handling.packing.report import Known
from service.store.handles import Connection
from service.store.load_records import load_collection, load_containers
from service.store.printed.runs import load_attached

_SHARED = frozenset(("conflicting-materials", "stacking-limit-disagrees", "overfilled"))
"""Checks of a container that look into those that lie in it."""


def check_container(
    connection: Connection, container_number: str, *, today: date
) -> tuple[Finding, ...]:
    """Give what is wrong with the current packing of a container; nothing for an unknown one.

    Of the containers around it comes what its contents do to theirs.
    """
    found: dict[Finding, None] = {}
    seen = set[str]()
    number = container_number
    while number and number not in seen:
        noticed = _check_one(connection, number, today)
        found.update((one, None) for one in noticed if not seen or one.code in _SHARED)
        seen.add(number)
        number = next((one.inside for one in load_containers(connection, [number])), "")
    return tuple(found)


def _check_one(connection: Connection, container_number: str, today: date) -> tuple[Finding, ...]:
    collection = load_collection(connection, [container_number])
    attached = load_attached(connection, [container_number])
    known = Known(today, frozenset(card.made.kind for card in attached))
    return tuple(
        finding
        for packing in arrange_packings(collection).packings
        if packing.container.container_number == container_number
        for finding in check_packing(packing, known, off=collection.museum.packing_checks_off)
    )
