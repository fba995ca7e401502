from __future__ import annotations

from dataclasses import replace

import pytest
from sqlalchemy import Connection

from service.errors import NotFoundError, UnusableMappingError
from service.records.mapping.mapping import ColumnMapping
from service.store.history import load_history
from service.store.kept.mappings import (
    forget_mapping,
    list_mappings,
    load_mapping,
    load_mappings,
    save_mapping,
)
from tests.records.mapping.made import MAPPING
from tests.store.made import LATER, STAMP, changes

PLAIN = ColumnMapping(headings=(("No", "object_number"), ("Was", "title")))


def test_a_mapping_is_kept_with_who_and_when(connection: Connection) -> None:
    """It comes back as it was; saved again it changes nothing."""
    assert save_mapping(connection, "ours", MAPPING, stamp=STAMP)
    before = changes(connection)
    assert not save_mapping(connection, "ours", MAPPING, stamp=LATER)
    found = load_mapping(connection, "ours")
    assert dict(found.mapping.headings) == dict(MAPPING.headings)
    assert replace(found.mapping, headings=MAPPING.headings) == MAPPING
    assert (found.stamp, changes(connection)) == (STAMP, before)


def test_the_latest_comes_first(connection: Connection) -> None:
    """A change counts as saving; the history tells of each."""
    save_mapping(connection, "ours", PLAIN, stamp=STAMP)
    save_mapping(connection, "theirs", MAPPING, stamp=STAMP)
    assert [one.name for one in list_mappings(connection)] == ["ours", "theirs"]
    save_mapping(connection, "theirs", replace(MAPPING, sheet="x"), stamp=LATER)
    assert [one.name for one in list_mappings(connection)] == ["theirs", "ours"]
    told = [one.entry.verb for one in load_history(connection)]
    assert told[-3:] == ["mapping saved"] * 3


def test_a_reader_gets_all_and_the_one_asked_for(connection: Connection) -> None:
    """One that is not there is told before anything is read."""
    save_mapping(connection, "ours", PLAIN, stamp=STAMP)
    loaded = load_mappings(connection, wanted="ours")
    assert (dict(loaded.saved), loaded.wanted) == ({"ours": PLAIN}, "ours")
    with pytest.raises(NotFoundError, match="no mapping 'theirs'"):
        load_mappings(connection, wanted="theirs")


def test_what_cannot_be_used_is_not_saved(connection: Connection) -> None:
    """Nothing is kept of it, and the reason is told."""
    with pytest.raises(UnusableMappingError, match="object_number"):
        save_mapping(connection, "ours", ColumnMapping(), stamp=STAMP)
    assert list_mappings(connection) == ()


def test_a_forgotten_mapping_is_gone(connection: Connection) -> None:
    """Once more there is nothing to forget."""
    save_mapping(connection, "ours", PLAIN, stamp=STAMP)
    forget_mapping(connection, "ours", stamp=LATER)
    assert list_mappings(connection) == ()
    with pytest.raises(NotFoundError):
        forget_mapping(connection, "ours", stamp=LATER)
