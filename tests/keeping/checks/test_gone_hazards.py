"""Tests for hazards that were looked for and not found."""

from __future__ import annotations

import json
from datetime import date

from service.keeping.checks.gone_hazards import GoneHazard, note_gone_hazards
from service.records.record import Hazard, HazardState
from service.store.handles import Connection
from service.store.history import load_history
from tests.keeping.made import LEAD
from tests.store.made import LATER


def test_history_keeps_why(connection: Connection) -> None:
    """What it was, what was found, and the day; nothing gone leaves no trace."""
    before = len(load_history(connection, object_number=LEAD))
    note_gone_hazards(connection, LEAD, (), stamp=LATER)
    assert len(load_history(connection, object_number=LEAD)) == before
    gone = GoneHazard(Hazard("lead", HazardState.PRESUMED), "XRF: tin", date(2026, 11, 2))
    note_gone_hazards(connection, LEAD, [gone], stamp=LATER)
    entry = load_history(connection, object_number=LEAD)[-1].entry
    assert entry.verb == "hazard not found"
    assert json.loads(entry.detail) == {
        "code": "lead",
        "state": "presumed",
        "note": "XRF: tin",
        "checked_on": "2026-11-02",
    }
