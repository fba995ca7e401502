"""Tests for names that one process holds."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from sqlalchemy import text

from service.jobs.locks import hold_file, hold_name, make_plain_engine
from service.store.handles import Engine
from service.store.open import open_url
from tests.jobs.made import working_elsewhere
from tests.store.postgresql import find_programs, make_database, run_server


@pytest.fixture(scope="module")
def on_postgresql() -> Iterator[Engine]:
    """Give an empty database on a server of its own."""
    programs = find_programs()
    if programs is None:
        pytest.skip("There is no initdb: install the package postgresql.")
    with run_server(programs) as url:
        opened = open_url(make_database(url, "locks"))
        yield opened
        opened.dispose()


def test_a_name_is_held_once(engine: Engine) -> None:
    """A second holder is told so at once; another name is free; afterwards it is free again."""
    _hold(engine)


@pytest.mark.postgresql
def test_a_name_is_held_once_on_postgresql(on_postgresql: Engine) -> None:
    """There the lock belongs to the session."""
    _hold(on_postgresql)


def _hold(engine: Engine) -> None:
    with hold_name(engine, "jobs-1") as first:
        with hold_name(engine, "jobs-1") as second, hold_name(engine, "jobs-2") as other:
            assert (first, second, other) == (True, False, True)
        # That the second one closed its file took nothing from the first.
        with hold_name(engine, "jobs-1") as third:
            assert not third
    with hold_name(engine, "jobs-1") as later:
        assert later


def test_a_process_holds_its_name_until_it_is_killed(engine: Engine, tmp_path: Path) -> None:
    """No process that is gone keeps another one out, however it went."""
    with working_elsewhere(tmp_path), hold_name(engine, "jobs-1") as is_ours:
        assert not is_ours
    with hold_name(engine, "jobs-1") as is_ours:
        assert is_ours


def test_the_plain_engine_begins_by_itself_only_to_write(engine: Engine) -> None:
    """It reads the same store, and a reader takes no lock for long."""
    with make_plain_engine(engine) as plain, plain.connect() as connection:
        assert connection.execute(text("SELECT count(*) FROM objects")).scalar_one() == 3
        assert connection.execute(text("PRAGMA foreign_keys")).scalar_one() == 1
        assert connection.execute(text("PRAGMA synchronous")).scalar_one() == 2


def test_a_file_is_held_by_one(tmp_path: Path) -> None:
    """Its name may hold what an address may not; whoever comes second is told so."""
    path = tmp_path / "what? #1%20.lock"
    with hold_file(path) as first, hold_file(path) as second:
        assert (first, second) == (True, False)
        assert path.is_file()
    with hold_file(path) as later:
        assert later
