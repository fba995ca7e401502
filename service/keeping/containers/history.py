"""The history of a container by changes, with what each packing changed in the one before it."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from service.keeping.containers.conflict import PACKING_VERBS
from service.store.handles import Connection
from service.store.history import Event, Stamp, load_history
from service.store.load_records import load_container
from service.store.packing.differ import Repacking, compare_repacked
from service.store.packing.load import load_packing


@dataclass(frozen=True, slots=True)
class Deed:
    """One thing that a change did; `repacking` says what a packing changed in the one before."""

    verb: str
    object_number: str
    revision: int | None
    detail: Mapping[str, object]
    repacking: Repacking | None = None


@dataclass(frozen=True, slots=True)
class ToldChange:
    """All that one person did to a container at one moment."""

    number: int
    stamp: Stamp
    deeds: tuple[Deed, ...]


@dataclass(frozen=True, slots=True)
class HistoryPage:
    """Some changes, newest first; `next_before` begins the next page, 0 after the last one."""

    changes: tuple[ToldChange, ...]
    next_before: int = 0


def tell_history(
    connection: Connection, container_number: str, *, limit: int, before: int = 0
) -> HistoryPage:
    """Tell what was done to a container, newest first, from before a change on.

    Raises:
        NotFoundError: When there is no such container.
    """
    load_container(connection, container_number)
    grouped: dict[int, list[Event]] = {}
    for event in load_history(connection, container_number=container_number):
        if not before or event.change < before:
            grouped.setdefault(event.change, []).append(event)
    numbers = sorted(grouped, reverse=True)
    shown = numbers[:limit]
    told = tuple(_tell(connection, container_number, n, grouped[n]) for n in shown)
    return HistoryPage(told, shown[-1] if len(numbers) > limit else 0)


def _tell(
    connection: Connection, container_number: str, number: int, events: Iterable[Event]
) -> ToldChange:
    some = list(events)
    deeds = tuple(_deed(connection, container_number, event) for event in some)
    return ToldChange(number, some[0].stamp, deeds)


def _deed(connection: Connection, container_number: str, event: Event) -> Deed:
    entry = event.entry
    repacking = None
    if entry.verb in PACKING_VERBS and entry.revision:
        was = load_packing(connection, container_number, revision=entry.revision - 1)
        now = load_packing(connection, container_number, revision=entry.revision)
        repacking = compare_repacked({container_number: was}, {container_number: now})[
            container_number
        ]
    detail = json.loads(entry.detail) if entry.detail else {}
    return Deed(entry.verb, entry.object_number, entry.revision, detail, repacking)
