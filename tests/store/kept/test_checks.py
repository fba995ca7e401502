from __future__ import annotations

from datetime import date

import pytest
from sqlalchemy import Connection

from service.errors import NotFoundError
from service.records.record import Collection, ContainerRecord
from service.store.kept.checks import Check, list_due, load_checks, save_check
from service.store.save_records import save_records
from tests.store.made import LATER, STAMP

LONG_AGO, LATELY = date(2025, 3, 1), date(2026, 11, 2)


def test_checks_are_kept_with_who_noted_them(connection: Connection) -> None:
    """The latest day comes first, whenever it was noted."""
    save_check(connection, "B-001", LATELY, note="no pests", stamp=STAMP)
    save_check(connection, "B-001", LONG_AGO, note="tissue yellow", stamp=LATER)
    assert load_checks(connection, "B-001") == (
        Check("B-001", LATELY, "no pests", STAMP),
        Check("B-001", LONG_AGO, "tissue yellow", LATER),
    )
    with pytest.raises(NotFoundError):
        save_check(connection, "B-999", LATELY, note="", stamp=STAMP)


def test_what_is_due_is_listed_in_walking_order(connection: Connection) -> None:
    """Packed containers not checked since a day come by location; without one they come last."""
    places = {"B-002": ("Store 2", "Bay 9"), "B-001": ("Store 2", "Bay 10")}
    moved = tuple(ContainerRecord(number, location=where) for number, where in places.items())
    save_records(connection, Collection(containers=moved), stamp=STAMP)
    assert [due.container_number for due in list_due(connection, before=LATELY)] == list(places)
    save_check(connection, "B-001", LONG_AGO, note="", stamp=STAMP)
    save_check(connection, "B-002", LATELY, note="", stamp=STAMP)
    (due,) = list_due(connection, before=LATELY)
    assert (due.container_number, due.location, due.last_on) == (
        "B-001",
        "Store 2 / Bay 10",
        LONG_AGO,
    )
