from __future__ import annotations

import pytest
from sqlalchemy import Connection

from service.errors import NotFoundError
from service.store.kept.imports import (
    Import,
    list_imports,
    load_import,
    note_import,
    note_undoes,
)
from tests.store.made import LATER, STAMP


def test_the_latest_file_comes_first(connection: Connection) -> None:
    """Every file taken in is known by name, hash, person and what it changed."""
    first = note_import(connection, "export.csv", "a" * 64, {"new": 3}, stamp=STAMP)
    second = note_import(connection, "export.csv", "b" * 64, {"changed": 1}, stamp=LATER)
    assert list_imports(connection) == (
        Import(second, "export.csv", "b" * 64, {"changed": 1}, LATER),
        Import(first, "export.csv", "a" * 64, {"new": 3}, STAMP),
    )
    assert len(list_imports(connection, limit=1)) == 1


def test_an_import_knows_what_it_took_back(connection: Connection) -> None:
    """And the other knows by which it was."""
    first = note_import(connection, "export.csv", "a" * 64, {"new": 3}, stamp=STAMP)
    second = note_import(connection, "undo", "a" * 64, {}, stamp=LATER)
    note_undoes(connection, second, undoes=first)
    assert load_import(connection, second).undoes == first
    assert load_import(connection, first).undone_by == (second,)
    with pytest.raises(NotFoundError, match="no import '99'"):
        load_import(connection, 99)
