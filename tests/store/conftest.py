from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from sqlalchemy import Connection, Engine

from service.store.open import writing
from tests.store.made import fill, make_store


@pytest.fixture
def engine(tmp_path: Path) -> Iterator[Engine]:
    """Give a store of its own with three boxes in it."""
    made = make_store(tmp_path)
    fill(made)
    yield made
    made.dispose()


@pytest.fixture
def connection(engine: Engine) -> Iterator[Connection]:
    """Give a connection in one transaction."""
    with writing(engine) as connection:
        yield connection
