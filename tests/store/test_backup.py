from __future__ import annotations

import sqlite3
import threading
from pathlib import Path

import pytest
from sqlalchemy import Engine

from service.errors import BackupError
from service.records.record import Collection, ObjectRecord
from service.store.backup import check_database, copy_database
from service.store.open import open_folder, open_url, reading, writing
from service.store.save_records import save_records
from tests.store.made import STAMP, dump

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


def test_a_copy_is_finished_while_others_go_on_writing(engine: Engine, tmp_path: Path) -> None:
    """A large store is copied though commits follow each other without a pause."""
    many = tuple(ObjectRecord(f"L.{number}", "Lead line " * 100) for number in range(5_000))
    with writing(engine) as connection:
        save_records(connection, Collection(objects=many), stamp=STAMP)
    stop, begun = threading.Event(), threading.Event()

    def write() -> None:
        count = 0
        while not stop.is_set():
            title = ObjectRecord("L.1", f"Lead line {count}")
            with writing(engine) as connection:
                save_records(connection, Collection(objects=(title,)), stamp=STAMP)
            count += 1
            begun.set()

    writer = threading.Thread(target=write)
    writer.start()
    try:
        begun.wait()
        copy_database(engine, tmp_path / "copy.db")
    finally:
        stop.set()
        writer.join()
    check_database(tmp_path / "copy.db")
