from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from service.jobs.line import TaskLine, open_line
from service.keeping.desk import Desk
from service.pipeline.ready import Workshop
from service.store.handles import Engine
from service.store.open import writing
from service.store.save_records import save_records
from service.store.shelf.files import open_shelf
from service.wiring import open_workshop
from tests.keeping.made import COLLECTION
from tests.store.made import STAMP, make_store


@pytest.fixture
def engine(tmp_path: Path) -> Iterator[Engine]:
    """Give a store with a box and a garment cover packed."""
    made = make_store(tmp_path)
    with writing(made) as connection:
        save_records(connection, COLLECTION, stamp=STAMP)
    yield made
    made.dispose()


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


@pytest.fixture
def line(engine: Engine) -> Iterator[TaskLine]:
    """Give the line alone: nobody does what is asked for."""
    with open_line(engine) as opened:
        yield opened
