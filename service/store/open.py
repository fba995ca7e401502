"""Opens the store: an engine for a data folder (SQLite) or a URL, and its transactions.

Every transaction that may write begins with BEGIN IMMEDIATE: one that began by reading would fail
at once when another has written meanwhile, and waiting would not help. This is the documented way
to give SQLAlchemy's SQLite driver real transactions.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path

from sqlalchemy import Connection, Dialect, Engine, create_engine, event
from sqlalchemy.exc import DataError, DBAPIError
from sqlalchemy.pool import ConnectionPoolEntry

from service.errors import StoreBusyError, StoreFullError, UnstorableTextError
from service.sentence import Sentence

STORE_FILE = "store.db"
FILE_MODE = 0o600
BUSY_MILLISECONDS = 10_000

# PostgreSQL, appendix A: two that cannot go on together, a deadlock, a lock not to be had.
_BUSY_STATES = frozenset({"40001", "40P01", "55P03"})
_FULL_STATE = "53100"


def open_folder(folder: Path) -> Engine:
    """Open the store in a data folder, which is made where it is missing; only its owner reads it.

    The folder must be on a disk of this machine: locks do not hold on a network share.
    """
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / STORE_FILE
    # SQLite gives its journal the mode of the file, so the file is there before SQLite is.
    path.touch(mode=FILE_MODE)
    path.chmod(FILE_MODE)
    return open_url(f"sqlite:///{path}")


def open_url(url: str) -> Engine:
    """Open the store at a database URL; nothing is asked of the database yet."""
    engine = create_engine(url)
    if engine.dialect.name == "postgresql":
        event.listen(engine, "do_connect", _prepare_postgresql)
    if engine.dialect.name == "sqlite":
        event.listen(engine, "connect", _prepare_sqlite)
        event.listen(engine, "begin", _begin_sqlite)
    return engine


@contextmanager
def writing(engine: Engine) -> Iterator[Connection]:
    """Give a connection whose changes are kept together when the block ends well, else not at all.

    Raises:
        StoreBusyError: When others kept the store locked for too long.
        StoreFullError: When the disk is full.
    """
    with _telling(), engine.begin() as connection:
        yield connection


@contextmanager
def reading(engine: Engine) -> Iterator[Connection]:
    """Give a connection that sees one state of the store throughout and keeps no writer waiting.

    With a rollback journal a reader holds up commits: keep the block short.

    Raises:
        StoreBusyError: When others kept the store locked for too long.
    """
    with _telling(), engine.execution_options(read_only=True).begin() as connection:
        yield connection


def journal_mode_for(version: tuple[int, ...]) -> str:
    """Choose SQLite's journal for the version of the library that is linked.

    Versions 3.7.0 to 3.51.2 can lose committed rows in WAL mode when several connections write or
    checkpoint; repaired in 3.51.3, and in 3.50.7 and 3.44.6 of the older lines (sqlite.org, "Write-
    Ahead Logging", the WAL-reset bug).
    """
    repaired = (
        version >= (3, 51, 3) or (3, 50, 7) <= version < (3, 51) or (3, 44, 6) <= version < (3, 45)
    )
    return "WAL" if repaired else "DELETE"


def _prepare_sqlite(connection: sqlite3.Connection, _: ConnectionPoolEntry) -> None:
    # The driver begins no transaction by itself; ours begin in `_begin_sqlite`.
    connection.isolation_level = None
    (text,) = connection.execute("SELECT sqlite_version()").fetchone()
    mode = journal_mode_for(tuple(int(part) for part in text.split(".")))
    # The time to wait stands first, for changing the journal may have to wait already.
    connection.execute(f"PRAGMA busy_timeout = {BUSY_MILLISECONDS}")
    connection.execute(f"PRAGMA journal_mode = {mode}")
    connection.execute("PRAGMA synchronous = FULL")
    connection.execute("PRAGMA foreign_keys = ON")


def _prepare_postgresql(
    _dialect: Dialect, _record: ConnectionPoolEntry, _arguments: object, named: dict[str, object]
) -> None:
    """Wait no longer for a lock than on SQLite; options that the URL gives stand before ours."""
    options = f"{named.get('options', '')} -c lock_timeout={BUSY_MILLISECONDS}"
    named["options"] = options.strip()


def _begin_sqlite(connection: Connection) -> None:
    read_only = connection.get_execution_options().get("read_only", False)
    connection.exec_driver_sql("BEGIN" if read_only else "BEGIN IMMEDIATE")


@contextmanager
def _telling() -> Iterator[None]:
    """Turn what the database says of locks and room into errors of ours.

    Raises:
        StoreBusyError: When others kept the store locked for too long.
        StoreFullError: When the disk is full.
        UnstorableTextError: When a text to look for holds a NUL, which PostgreSQL refuses.
        DBAPIError: When the database has any other trouble.
    """
    try:
        yield
    except DBAPIError as error:
        if wrong := _find_unstorable(error):
            raise UnstorableTextError(wrong) from error
        # The low byte is the kind, the rest says more closely what happened.
        code = getattr(error.orig, "sqlite_errorcode", 0) & 0xFF
        state = getattr(error.orig, "sqlstate", None)
        if code == sqlite3.SQLITE_BUSY or state in _BUSY_STATES:
            message = Sentence("The store was busy for too long.")
            raise StoreBusyError(message) from error
        if code == sqlite3.SQLITE_FULL or state == _FULL_STATE:
            message = Sentence("There is no room left for the store.")
            raise StoreFullError(message) from error
        raise


def _find_unstorable(error: DBAPIError) -> str:
    """Find the text that PostgreSQL could not be asked for, if that is what failed."""
    sent = error.params if isinstance(error, DataError) else None
    values = sent.values() if isinstance(sent, Mapping) else sent or ()
    return next((value for value in values if isinstance(value, str) and "\0" in value), "")
