"""A copy of the database as it is at one moment, made while others go on working."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

from sqlalchemy import Engine

from service.errors import BackupError
from service.store.open import BUSY_MILLISECONDS, FILE_MODE


def copy_database(engine: Engine, target: Path) -> None:
    """Copy an SQLite store with the Online Backup API (sqlite.org/backup.html), and check the copy.

    The copy is taken in one step: between steps others may write, and then SQLite begins again from
    the first page, so that a copy in portions is never finished while somebody goes on working.
    With a rollback journal commits wait for that long, as they do for any reader.

    Raises:
        BackupError: When the store is on another database, or the copy is not whole.
    """
    if engine.dialect.name != "sqlite" or engine.url.database is None:
        name = engine.dialect.name
        reason = "this database is backed up with its own tools, such as pg_dump"
        raise BackupError(name, reason=reason)
    target.touch(mode=FILE_MODE)
    with (
        closing(sqlite3.connect(engine.url.database, timeout=BUSY_MILLISECONDS / 1_000)) as source,
        closing(sqlite3.connect(target)) as copy,
    ):
        source.backup(copy)
    check_database(target)


def check_database(path: Path) -> None:
    """Look through a database: every page, every index, every row that another one names.

    Raises:
        BackupError: When it is no whole store.
    """
    try:
        with closing(sqlite3.connect(f"file:{path}?mode=ro", uri=True)) as copy:
            faults = [text for (text,) in copy.execute("PRAGMA integrity_check") if text != "ok"]
            faults += [
                f"a row of {row[0]} names none" for row in copy.execute("PRAGMA foreign_key_check")
            ]
            copy.execute("SELECT version_num FROM alembic_version").fetchone()
    except sqlite3.DatabaseError as error:
        raise BackupError(path.name, reason=f"it is no whole store ({error})") from error
    if faults:
        raise BackupError(path.name, reason=f"it is damaged: {faults[0]}")
