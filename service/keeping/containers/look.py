"""A container as one looks at it: contents with photos, warnings, findings, and what is out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from service.contents.arrange import arrange_packings
from service.contents.packing import Packing
from service.errors import NotFoundError
from service.findings import Finding
from service.handling.hazards import reword_hazards
from service.handling.presume import presume_hazards
from service.keeping.checks.packings import check_container
from service.keeping.today import load_printable
from service.records.record import ContainerRecord, Museum, PackingRecord
from service.store.handles import Connection
from service.store.kept.outs import Out, load_outs
from service.store.load_records import load_container
from service.store.packing.load import load_packing
from service.store.shelf.photos import StoredPhoto


@dataclass(frozen=True, slots=True)
class ContainerLook:
    """All that is known of a container now.

    Attributes:
        record: The container itself.
        packed: Its current packing as it is kept; revision 0 where nothing was ever packed.
        packing: The same with its objects in layers, presumed hazards among the recorded ones.
        museum: The museum's own choices.
        photos: The photos that have been brought, by the names the objects have for them.
        outs: Slips of what is out of it.
        findings: What the checks of packings notice.
    """

    record: ContainerRecord
    packed: PackingRecord
    packing: Packing
    museum: Museum
    photos: Mapping[str, StoredPhoto]
    outs: tuple[Out, ...]
    findings: tuple[Finding, ...]


def look_at(connection: Connection, container_number: str, *, today: date) -> ContainerLook:
    """Gather what is known of a container.

    Raises:
        NotFoundError: When there is none of that number.
    """
    record = load_container(connection, container_number)
    printable = load_printable(connection, [container_number])
    presumed, _ = presume_hazards(printable.collection)
    collection = reword_hazards(presumed)
    for packing in arrange_packings(collection).packings:
        if packing.container.container_number == container_number:
            return ContainerLook(
                record,
                load_packing(connection, container_number),
                packing,
                collection.museum,
                printable.photos,
                load_outs(connection, container_number=container_number),
                check_container(connection, container_number, today=today),
            )
    raise NotFoundError(container_number, what="container")
