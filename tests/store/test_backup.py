from __future__ import annotations

import sqlite3
from pathlib import Path

import pytest
from sqlalchemy import Engine

from service.errors import BackupError
from service.store.backup import check_database, copy_database
from service.store.open import open_folder, open_url, reading
from tests.store.made import dump

DATABASES = ("sqlite",)


def test_the_copy_holds_every_row(engine: Engine, tmp_path: Path) -> None:
    """What is copied is the store itself, row by row, and only its owner reads it."""
    copy = tmp_path / "copy" / "store.db"
    copy.parent.mkdir()
    copy_database(engine, copy)
    other = open_folder(copy.parent)
    with reading(engine) as ours, reading(other) as theirs:
        assert dump(ours) == dump(theirs)
    assert copy.stat().st_mode & 0o077 == 0
    other.dispose()


def test_a_damaged_copy_is_told(engine: Engine, tmp_path: Path) -> None:
    """A page that was overwritten, a file of another kind and a cut one are no whole store."""
    copy = tmp_path / "copy.db"
    copy_database(engine, copy)
    whole = copy.read_bytes()
    for data in (
        b"text",
        b"",
        whole[: len(whole) // 2],
        whole[:4096] + b"\xff" * 4096 + whole[8192:],
    ):
        copy.write_bytes(data)
        with pytest.raises(BackupError):
            check_database(copy)


def test_a_row_that_names_none_is_told(engine: Engine, tmp_path: Path) -> None:
    """Keys are followed, too."""
    copy = tmp_path / "copy.db"
    copy_database(engine, copy)
    with sqlite3.connect(copy) as connection:
        connection.execute("INSERT INTO today_stale VALUES (999, 1)")
    connection.close()
    with pytest.raises(BackupError, match="names none"):
        check_database(copy)


def test_another_database_has_its_own_tools(tmp_path: Path) -> None:
    """What cannot be copied here is told with what can."""
    with pytest.raises(BackupError, match="pg_dump"):
        copy_database(open_url("postgresql+psycopg://"), tmp_path / "x")
