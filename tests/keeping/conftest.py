from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from service.keeping.desk import Desk
from service.pages.ruler import Ruler
from service.pipeline.ready import Workshop
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from service.store.handles import Connection, Engine
from service.store.open import writing
from service.store.save_records import save_records
from service.store.shelf.files import open_shelf
from service.wiring import open_workshop
from tests.keeping.made import COLLECTION
from tests.store.made import STAMP, make_store


@pytest.fixture(scope="session")
def ruler() -> Ruler:
    """Give the ruler of the shipped fonts."""
    return PangoRuler(FONTS_CONF)


@pytest.fixture
def engine(tmp_path: Path) -> Iterator[Engine]:
    """Give a store with a box and a garment cover packed."""
    made = make_store(tmp_path)
    with writing(made) as connection:
        save_records(connection, COLLECTION, stamp=STAMP)
    yield made
    made.dispose()


@pytest.fixture
def connection(engine: Engine) -> Iterator[Connection]:
    """Give a connection in one transaction."""
    with writing(engine) as connection:
        yield connection


@pytest.fixture(scope="session")
def workshop(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Workshop]:
    """Open a workshop with one child process for the whole session."""
    with open_workshop(tmp_path_factory.mktemp("workshop"), processes=1) as opened:
        yield opened


@pytest.fixture
def desk(engine: Engine, workshop: Workshop, tmp_path: Path) -> Desk:
    """Give a desk whose shelf is empty."""
    shelf = open_shelf(tmp_path / "files", scratch=tmp_path)
    return Desk(engine, shelf, workshop, tmp_path)
