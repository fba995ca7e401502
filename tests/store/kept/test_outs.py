from __future__ import annotations

from datetime import date

import pytest
from sqlalchemy import Connection

from service.errors import NotFoundError
from service.store.history import load_history
from service.store.kept.outs import Slip, load_outs, load_overdue, note_back, note_out
from service.store.packing.load import load_packing
from tests.store.made import HAT, LAMP, LATER, LEAD, STAMP

SLIP = Slip(LEAD, "B-001", (), "I. Hale, studio", "to be drawn", date(2026, 12, 1))


def test_an_object_is_out_until_it_is_back(connection: Connection) -> None:
    """The slip says who has it, why and until when; coming back ends it, once."""
    out = note_out(connection, SLIP, stamp=STAMP)
    assert load_outs(connection, object_number=LEAD) == (out,)
    assert (out.slip, out.stamp, out.is_out) == (SLIP, STAMP, True)
    back = note_back(connection, out.out_id, stamp=LATER)
    assert back.back_at == LATER.at
    assert load_outs(connection) == ()
    assert note_back(connection, out.out_id, stamp=STAMP).back_at == LATER.at


def test_it_changes_no_packing(connection: Connection) -> None:
    """What is out keeps its place, so that no card is wrong; the history tells of it."""
    note_out(connection, SLIP, stamp=STAMP)
    assert load_packing(connection, "B-001").revision == 1
    (event,) = (e for e in load_history(connection, object_number=LEAD) if "slip" in e.entry.verb)
    assert "to be drawn" in event.entry.detail


def test_parts_can_be_out(connection: Connection) -> None:
    """The parts named are out; the container is asked for what is out of it."""
    out = note_out(connection, Slip(HAT, "B-002", ("b",)), stamp=STAMP)
    assert load_outs(connection, container_number="B-002") == (out,)
    assert load_outs(connection, container_number="B-001") == ()


@pytest.mark.parametrize(
    "slip",
    [Slip(LAMP, "B-001"), Slip(HAT, "B-002", ("c",)), Slip(LEAD, "B-999")],
    ids=["not there", "no such part", "no such container"],
)
def test_what_is_not_there_cannot_go(connection: Connection, slip: Slip) -> None:
    """Only what lies in the container can be taken out of it."""
    with pytest.raises(NotFoundError):
        note_out(connection, slip, stamp=STAMP)


def test_what_should_be_back_is_listed(connection: Connection) -> None:
    """A slip is overdue from the day after; one without a day never is."""
    out = note_out(connection, SLIP, stamp=STAMP)
    note_out(connection, Slip(HAT, "B-002"), stamp=STAMP)
    assert load_overdue(connection, date(2026, 12, 1)) == ()
    assert load_overdue(connection, date(2026, 12, 2)) == (out,)
    with pytest.raises(NotFoundError, match="removal slip"):
        note_back(connection, 999, stamp=STAMP)
