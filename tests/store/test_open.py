from __future__ import annotations

import sqlite3
import stat
import sys
from pathlib import Path

import pytest
from sqlalchemy import Engine, event, insert, text
from sqlalchemy.exc import IntegrityError, OperationalError

import service.store.open
from service.errors import NotFoundError, StoreBusyError, StoreFullError, UnstorableTextError
from service.store.history import begin_change
from service.store.load_records import load_container
from service.store.open import (
    STORE_FILE,
    journal_mode_for,
    open_folder,
    open_url,
    reading,
    writing,
)
from service.store.packing.load import find_held
from service.store.tables import actors, photos
from tests.store.made import LATER, STAMP, rows
from tests.store.postgresql import drop_database, make_database

DATABASES = ("sqlite",)

# sqlite.org names the versions that were repaired: 3.51.3, 3.50.7 and 3.44.6.
MODES = [
    ((3, 40, 1), "DELETE"),
    ((3, 44, 5), "DELETE"),
    ((3, 44, 6), "WAL"),
    ((3, 45, 0), "DELETE"),
    ((3, 50, 6), "DELETE"),
    ((3, 50, 7), "WAL"),
    ((3, 51, 2), "DELETE"),
    ((3, 51, 3), "WAL"),
    ((3, 52, 0), "WAL"),
]


@pytest.mark.parametrize(("version", "mode"), MODES, ids=[str(version) for version, _ in MODES])
def test_journal_follows_the_library(version: tuple[int, ...], mode: str) -> None:
    """Write-ahead logging is used on repaired libraries only."""
    assert journal_mode_for(version) == mode


def test_pragmas_are_set(engine: Engine) -> None:
    """Every connection enforces keys, waits, writes through, and has the right journal."""
    with reading(engine) as connection:
        found = {
            name: connection.execute(text(f"PRAGMA {name}")).scalar()
            for name in ("foreign_keys", "synchronous", "busy_timeout", "journal_mode")
        }
    assert found == {
        "foreign_keys": 1,
        "synchronous": 2,
        "busy_timeout": 10_000,
        "journal_mode": journal_mode_for(sqlite3.sqlite_version_info).lower(),
    }


@pytest.mark.skipif(sys.platform == "win32", reason="it has no such file modes")
def test_only_the_owner_reads_the_file(tmp_path: Path) -> None:
    """The file is its owner's alone from the first moment, and again if somebody opened it up."""
    path = tmp_path / "deep" / STORE_FILE
    open_folder(path.parent).dispose()
    assert stat.S_IMODE(path.stat().st_mode) == 0o600
    path.chmod(0o644)
    open_folder(path.parent).dispose()
    assert stat.S_IMODE(path.stat().st_mode) == 0o600


def test_writers_begin_at_once_readers_do_not(engine: Engine) -> None:
    """Whoever may write takes the lock first; a reader never does."""
    said: list[str] = []
    event.listen(engine, "before_cursor_execute", lambda *a: said.append(a[2]))
    with writing(engine), reading(engine) as connection:
        connection.execute(text("SELECT 1"))
    assert said == ["BEGIN IMMEDIATE", "BEGIN", "SELECT 1"]


def test_what_fails_leaves_nothing(engine: Engine) -> None:
    """A block that ends badly keeps none of its changes, and keys are enforced."""
    with reading(engine) as connection:
        before = rows(connection, actors)
    with pytest.raises(IntegrityError):
        _write_half(engine)
    with reading(engine) as connection:
        assert rows(connection, actors) == before


def _write_half(engine: Engine) -> None:
    orphan = insert(photos).values(object_id=99, position=1, file="a", role="front", sha256="")
    with writing(engine) as connection:
        connection.execute(insert(actors).values(name="nobody"))
        connection.execute(orphan)


def test_a_locked_store_is_busy(engine: Engine) -> None:
    """Waiting too long for the lock is an error with words."""

    def hurry(connection: sqlite3.Connection, *_: object) -> None:
        connection.execute("PRAGMA busy_timeout = 1")

    event.listen(engine, "checkout", hurry)
    with writing(engine), pytest.raises(StoreBusyError), writing(engine):
        pass


def test_a_full_disk_is_said(engine: Engine) -> None:
    """Having no room left is an error with words; any other trouble comes as it is."""
    with reading(engine) as connection:
        pages = connection.execute(text("PRAGMA page_count")).scalar_one()
        connection.execute(text(f"PRAGMA max_page_count = {pages}"))
    long_names = [{"name": "x" * 3000 + str(number)} for number in range(100)]
    with pytest.raises(StoreFullError), writing(engine) as connection:
        connection.execute(insert(actors), long_names)
    with pytest.raises(OperationalError), writing(engine) as connection:
        connection.execute(text("SELECT nonsense"))


@pytest.mark.postgresql
def test_a_locked_row_is_busy_on_postgresql(
    template: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Whoever changes anything locks one row there; waiting too long is the same error."""
    monkeypatch.setattr(service.store.open, "BUSY_MILLISECONDS", 50)
    url = make_database(template, tmp_path.name, like="filled")
    first, second = open_url(url), open_url(url)
    with writing(first) as connection:
        begin_change(connection, STAMP)
        with pytest.raises(StoreBusyError), writing(second) as other:
            begin_change(other, LATER)
    first.dispose()
    second.dispose()
    drop_database(template, tmp_path.name)


def test_a_number_with_a_nul_is_not_found_or_refused(engine: Engine) -> None:
    """SQLite looks for it in vain; what PostgreSQL cannot be asked is an error of ours."""
    with pytest.raises((NotFoundError, UnstorableTextError)), reading(engine) as connection:
        load_container(connection, "B-\x00")
    with pytest.raises((NotFoundError, UnstorableTextError)), writing(engine) as connection:
        find_held(connection, "B-\x00")
