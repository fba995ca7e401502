"""Tests for what is known of a container."""

from __future__ import annotations

import pytest

from service.errors import NotFoundError
from service.keeping.containers.look import look_at
from service.store.handles import Connection
from service.store.kept.outs import Slip, note_out
from tests.keeping.made import BOX, EMPTY, JAR, LEAD
from tests.store.made import MOMENT, STAMP

TODAY = MOMENT.date()


def test_all_of_a_container_is_gathered(connection: Connection) -> None:
    """Its record, contents in layers, what is out, and what the checks notice."""
    note_out(connection, Slip(JAR, BOX, to_whom="Conservation"), stamp=STAMP)
    look = look_at(connection, BOX, today=TODAY)
    assert look.record.title == "Small finds"
    assert [one.record.object_number for one in look.packing.contents] == [JAR, LEAD]
    assert [layer.number for layer in look.packing.layers] == [1, 2]
    assert [out.slip.to_whom for out in look.outs] == ["Conservation"]
    assert look.packed.revision == 1


def test_an_empty_container_is_at_revision_0(connection: Connection) -> None:
    """So that the first object can be put in."""
    look = look_at(connection, EMPTY, today=TODAY)
    assert (look.packed.revision, look.packing.contents) == (0, ())


def test_an_unknown_one_is_told(connection: Connection) -> None:
    """There is no page of it."""
    with pytest.raises(NotFoundError):
        look_at(connection, "B-999", today=TODAY)
