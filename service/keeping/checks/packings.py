"""Checks how a container of a store is packed now, with the cards that are on it."""

from __future__ import annotations

from datetime import date

from service.contents.arrange import arrange_packings
from service.findings import Finding
from service.handling.packing.check import check_packing
from service.handling.packing.report import Known
from service.store.handles import Connection
from service.store.load_records import load_collection
from service.store.printed.runs import load_attached


def check_container(
    connection: Connection, container_number: str, *, today: date
) -> tuple[Finding, ...]:
    """Give what is wrong with the current packing of a container; nothing for an unknown one."""
    collection = load_collection(connection, [container_number])
    attached = load_attached(connection, [container_number])
    known = Known(today, frozenset(card.made.kind for card in attached))
    return tuple(
        finding
        for packing in arrange_packings(collection).packings
        if packing.container.container_number == container_number
        for finding in check_packing(packing, known, off=collection.museum.packing_checks_off)
    )
