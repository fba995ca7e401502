"""Hazards that were looked for and not found: the history keeps by whom, when and how.

No record says that a hazard is absent: a record without one is silent, and silence is no evidence.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from service.records.record import Hazard
from service.store.canonical import dump_json
from service.store.handles import Connection
from service.store.history import Entry, Stamp, begin_change, write_history


@dataclass(frozen=True, slots=True)
class GoneHazard:
    """A hazard that was recorded, what was found instead, and the day it was checked."""

    hazard: Hazard
    note: str
    checked_on: date | None


def note_gone_hazards(
    connection: Connection, object_number: str, gone: Sequence[GoneHazard], *, stamp: Stamp
) -> None:
    """Keep why hazards are no longer recorded of an object."""
    change = begin_change(connection, stamp)
    entries = [
        Entry(
            "hazard not found",
            object_number=object_number,
            detail=dump_json(
                {
                    "code": one.hazard.code,
                    "state": one.hazard.state.value,
                    "note": one.note,
                    "checked_on": str(one.checked_on or ""),
                }
            ),
        )
        for one in gone
    ]
    write_history(connection, change, entries)
