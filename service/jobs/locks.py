"""Names that one live process holds at a time, and the engine that DBOS works with.

A lock lives in a connection, so that it goes with the process however that ends: on PostgreSQL an
advisory lock of the session, on SQLite the lock of a small file of its own beside the store.
"""

from __future__ import annotations

import hashlib
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from sqlalchemy import URL, Connection, Engine, create_engine, event
from sqlalchemy.exc import OperationalError
from sqlalchemy.pool import ConnectionPoolEntry, NullPool

from service.store.open import BUSY_MILLISECONDS


@contextmanager
def make_plain_engine(engine: Engine) -> Iterator[Engine]:
    """Make a second engine for the same database, and close it again.

    Ours begins each transaction on SQLite by itself, which DBOS does as well: on one engine they
    would begin twice.
    """
    plain = create_engine(engine.url)
    if plain.dialect.name == "sqlite":
        event.listen(plain, "connect", _prepare_sqlite)
    try:
        yield plain
    finally:
        plain.dispose()


@contextmanager
def hold_name(engine: Engine, name: str) -> Iterator[bool]:
    """Hold a name while the block lasts, and tell whether it was to be had; never waits.

    `name` may become part of a file name.
    """
    is_sqlite = engine.dialect.name == "sqlite"
    url = URL.create("sqlite", database=f"{engine.url.database}-{name}.lock")
    with _connected(url if is_sqlite else engine.url) as connection:
        yield _take_file(connection) if is_sqlite else _take_advisory(connection, name)


@contextmanager
def hold_file(path: Path) -> Iterator[bool]:
    """Hold a file, made where it is missing, while the block lasts, and tell whether it was free.

    It never waits; others in this process are kept out as well as other processes.
    """
    with _connected(URL.create("sqlite", database=str(path))) as connection:
        yield _take_file(connection)


@contextmanager
def _connected(url: URL) -> Iterator[Connection]:
    # Without a pool a connection is closed when it is given back, and the lock goes with it.
    locks = create_engine(url, poolclass=NullPool, isolation_level="AUTOCOMMIT")
    with locks.connect() as connection:
        yield connection


def _take_file(connection: Connection) -> bool:
    connection.exec_driver_sql("PRAGMA busy_timeout = 0")
    try:
        connection.exec_driver_sql("BEGIN EXCLUSIVE")
    except OperationalError:
        return False
    return True


def _take_advisory(connection: Connection, name: str) -> bool:
    key = int.from_bytes(hashlib.sha256(f"underlid {name}".encode()).digest()[:8], signed=True)
    taken = connection.exec_driver_sql("SELECT pg_try_advisory_lock(%s)", (key,))
    return bool(taken.scalar_one())


def _prepare_sqlite(connection: sqlite3.Connection, _: ConnectionPoolEntry) -> None:
    # Only what writes begins a transaction here, and it takes the lock at once.
    connection.isolation_level = "IMMEDIATE"
    connection.execute(f"PRAGMA busy_timeout = {BUSY_MILLISECONDS}")
    connection.execute("PRAGMA synchronous = FULL")
    connection.execute("PRAGMA foreign_keys = ON")
