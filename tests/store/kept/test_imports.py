from __future__ import annotations

from sqlalchemy import Connection

from service.store.kept.imports import Import, list_imports, note_import
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
