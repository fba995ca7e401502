from __future__ import annotations

from datetime import date

from sqlalchemy import Connection

from service.records.record import PackingRecord, PlaceRecord
from service.store.taking_back.states import (
    NOTHING,
    State,
    StateKind,
    load_made_revisions,
    load_present,
    load_states,
    packing_state,
)
from tests.store.made import BOXES, HAT, LEAD
from tests.store.taking_back.made import CRATE, JUG, SHELF, take_in


def test_what_was_before_is_kept_and_no_more(connection: Connection) -> None:
    """Of what was changed the whole text; of what was new nothing but what it became."""
    number = take_in(connection)
    states = {one.key: one for one in load_states(connection, number)}
    assert set(states) == {
        (StateKind.MUSEUM, ""),
        *((StateKind.OBJECT, of) for of in (LEAD, JUG)),
        *((StateKind.CONTAINER, of) for of in ("B-002", CRATE, SHELF)),
        *((StateKind.PACKING, of) for of in ("B-001", "B-003", CRATE)),
    }
    assert "Title of" in (states[StateKind.OBJECT, LEAD].before.text or "")
    assert states[StateKind.OBJECT, JUG].before == states[StateKind.MUSEUM, ""].before == NOTHING
    assert states[StateKind.PACKING, "B-001"].revision == 2
    present = load_present(connection, states)
    assert {key: one.sha256 for key, one in present.items()} == {
        key: one.after_sha256 for key, one in states.items()
    }
    made = load_made_revisions(connection, (*BOXES, CRATE))
    assert made == {("B-001", 2), ("B-003", 1), (CRATE, 1)}


def test_the_same_import_again_changed_nothing(connection: Connection) -> None:
    """So there is nothing to take back."""
    take_in(connection)
    assert load_states(connection, take_in(connection)) == ()
    assert load_present(connection, [(StateKind.OBJECT, "nobody")]).keys() == {
        (StateKind.MUSEUM, "")
    }


def test_a_bare_packing_is_as_good_as_none() -> None:
    """Its number does not count; who packed, when and what lies there do."""
    assert packing_state(None) == packing_state(PackingRecord("B-001", 7)) == NOTHING
    assert NOTHING.sha256 == ""
    packed = [
        PackingRecord("B-001", 7, (PlaceRecord(HAT),)),
        PackingRecord("B-001", 7, packed_by="Ivy Hale"),
        PackingRecord("B-001", 7, packed_on=date(2026, 10, 14)),
    ]
    assert len({packing_state(one).sha256 for one in packed}) == 3
    assert State("{}").sha256 != State("{}", '{"a":"b"}').sha256
