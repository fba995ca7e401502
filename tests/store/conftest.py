from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from sqlalchemy import Connection, Engine

from service.store.migrations.upgrade import upgrade_store
from service.store.open import open_url, writing
from tests.store.made import fill, make_store
from tests.store.postgresql import drop_database, find_programs, make_database, run_server

_DATABASES = {
    "sqlite": pytest.param("sqlite"),
    "postgresql": pytest.param("postgresql", marks=pytest.mark.postgresql),
}


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    """Run whatever uses a store on both databases, or on those that the file names."""
    if "engine" in metafunc.fixturenames:
        wanted = getattr(metafunc.module, "DATABASES", tuple(_DATABASES))
        metafunc.parametrize("engine", [_DATABASES[name] for name in wanted], indirect=True)


@pytest.fixture(scope="session")
def template() -> Iterator[str]:
    """Run a server with a filled store to copy, and give the URL of its databases."""
    programs = find_programs()
    if programs is None:
        # A skip would hide there what CI is to see.
        skip = pytest.fail if os.environ.get("CI") else pytest.skip  # noqa: TID251 - tests may look
        skip("There is no initdb: install the package postgresql.")
    else:
        with run_server(programs) as url:
            engine = open_url(make_database(url, "filled"))
            upgrade_store(engine)
            fill(engine)
            engine.dispose()
            yield url


@pytest.fixture
def engine(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Engine]:
    """Give a store of its own with three boxes in it."""
    opened, close = _open(request, tmp_path)
    yield opened
    opened.dispose()
    close()


def _open(request: pytest.FixtureRequest, folder: Path) -> tuple[Engine, Callable[[], None]]:
    if request.param == "sqlite":
        made = make_store(folder)
        fill(made)
        return made, lambda: None
    url = request.getfixturevalue("template")
    name = folder.name
    return open_url(make_database(url, name, like="filled")), lambda: drop_database(url, name)


@pytest.fixture
def connection(engine: Engine) -> Iterator[Connection]:
    """Give a connection in one transaction."""
    with writing(engine) as connection:
        yield connection
