"""Tests for changing what lies in a container."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.errors import NotFoundError, PackedElsewhereError, PackingConflictError
from service.keeping.repack import Seen, go_back, lay_out, place_anew, put_in, take_out
from service.records.record import Collection, PlaceRecord, Weight
from service.store.handles import Connection
from service.store.load_records import load_container
from service.store.packing.load import load_packing
from service.store.save_records import save_records
from tests.keeping.made import BOX, EMPTY, GOWN, JAR, LEAD
from tests.store.made import LATER

SEEN = Seen(BOX, 1, "too heavy")


def test_putting_in_makes_the_next_revision(connection: Connection) -> None:
    """Who, when and why are those of the change; what lay there stays."""
    packed = put_in(connection, Seen(EMPTY, 0, "new find"), PlaceRecord("X.112"), stamp=LATER)
    assert (packed.revision, packed.packed_by, packed.reason) == (1, LATER.actor, "new find")
    assert packed.packed_on == LATER.at.date()
    again = put_in(connection, Seen(EMPTY, 1), PlaceRecord("X.113", layer=2), stamp=LATER)
    assert [place.object_number for place in again.places] == ["X.112", "X.113"]


def test_what_lies_elsewhere_has_to_be_moved(connection: Connection) -> None:
    """An object is in one container only."""
    with pytest.raises(PackedElsewhereError, match="GC-7"):
        put_in(connection, SEEN, PlaceRecord(GOWN), stamp=LATER)


def test_taking_out_leaves_the_rest(connection: Connection) -> None:
    """The object goes; earlier revisions still tell that it was there."""
    packed = take_out(connection, SEEN, LEAD, stamp=LATER)
    assert [place.object_number for place in packed.places] == [JAR]
    assert len(load_packing(connection, BOX, revision=1).places) == 2


def test_a_place_can_change(connection: Connection) -> None:
    """Heavy things go to the bottom: the same object, another layer."""
    packed = place_anew(connection, SEEN, PlaceRecord(JAR, layer=3, note="in tissue"), stamp=LATER)
    assert packed.places[0] == PlaceRecord(JAR, layer=3, note="in tissue")


def test_what_does_not_lie_there_is_told(connection: Connection) -> None:
    """An object that is not in the box is named with the box."""
    with pytest.raises(NotFoundError, match=rf"object in {BOX} .X\.112"):
        take_out(connection, SEEN, "X.112", stamp=LATER)
    with pytest.raises(NotFoundError, match=rf"object in {BOX} .X\.112"):
        place_anew(connection, SEEN, PlaceRecord("X.112"), stamp=LATER)


def test_the_second_of_two_packers_sees_both_states(connection: Connection) -> None:
    """Whoever saw an older state is told, even about an object that is gone by now."""
    take_out(connection, SEEN, LEAD, stamp=LATER)
    with pytest.raises(PackingConflictError) as caught:
        take_out(connection, SEEN, LEAD, stamp=LATER)
    assert (caught.value.expected, caught.value.revision) == (1, 2)
    assert JAR in caught.value.yours
    assert JAR in caught.value.current


def test_another_order_is_a_revision_and_the_same_is_none(connection: Connection) -> None:
    """Nothing new is nothing done: no card gets another revision for it."""
    turned = lay_out(connection, SEEN, lambda places: places[::-1], stamp=LATER)
    assert turned.revision == 2
    again = lay_out(connection, Seen(BOX, 2), lambda places: places, stamp=LATER)
    assert again == turned


def test_undoing_the_last_packing_brings_its_weight_back(connection: Connection) -> None:
    """Contents and measured weight are as they were; the history has both steps."""
    weighed = replace(load_container(connection, BOX), gross=Weight(5600.0))
    save_records(connection, Collection(containers=(weighed,)), stamp=LATER)
    take_out(connection, SEEN, LEAD, stamp=LATER)
    assert load_container(connection, BOX).gross is None
    back = go_back(connection, Seen(BOX, 2), 1, stamp=LATER)
    assert (back.revision, back.places) == (3, load_packing(connection, BOX, revision=1).places)
    assert load_container(connection, BOX).gross == Weight(5600.0)


def test_going_further_back_brings_no_weight(connection: Connection) -> None:
    """What was done in between may have changed more than the list of contents."""
    weighed = replace(load_container(connection, BOX), gross=Weight(5600.0))
    save_records(connection, Collection(containers=(weighed,)), stamp=LATER)
    take_out(connection, SEEN, LEAD, stamp=LATER)
    put_in(connection, Seen(BOX, 2), PlaceRecord("X.1"), stamp=LATER)
    go_back(connection, Seen(BOX, 3), 1, stamp=LATER)
    assert load_container(connection, BOX).gross is None
