"""Tests for the desk."""

from __future__ import annotations

from service.keeping.desk import Desk


def test_a_desk_cannot_be_changed_while_somebody_works_on_it(desk: Desk) -> None:
    """Store, shelf and workshop belong together for as long as the desk is open."""
    assert not hasattr(desk, "__dict__")
    assert hash(desk) == hash(Desk(desk.engine, desk.shelf, desk.workshop, desk.data_folder))
