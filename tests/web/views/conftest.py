"""A service over a store of its own for each test of a page."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import httpx
import pytest

from service.pipeline.ready import Workshop
from service.wiring import open_workshop
from tests.web.store.opened import fill_store, open_client
from tests.web.views.desk.printed import open_printed


@pytest.fixture(scope="session")
def workshop(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Workshop]:
    """Open a workshop of one child process."""
    with open_workshop(tmp_path_factory.mktemp("workshop"), processes=1) as opened:
        yield opened


@pytest.fixture(scope="session")
def filled(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Fill one store, to be copied."""
    folder = tmp_path_factory.mktemp("filled") / "data"
    fill_store(folder)
    return folder


@pytest.fixture
def client(tmp_path: Path, filled: Path, workshop: Workshop) -> Iterator[httpx.Client]:
    """Give a client of a service over a copy of the filled store."""
    folder = shutil.copytree(filled, tmp_path / "data")
    with open_client(folder, workshop) as opened:
        yield opened


@pytest.fixture
def printed(tmp_path: Path, filled: Path, workshop: Workshop) -> Iterator[httpx.Client]:
    """Give a client of a service over a store in which one run was printed, without ink."""
    with open_printed(filled, tmp_path / "data", workshop) as opened:
        yield opened


@pytest.fixture
def empty(tmp_path: Path, workshop: Workshop) -> Iterator[httpx.Client]:
    """Give a client of a service over an empty store."""
    with open_client(tmp_path / "new", workshop) as opened:
        yield opened
