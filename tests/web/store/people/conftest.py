"""A service over a store with people in it, for each test a store of its own."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import httpx
import pytest

from service.pipeline.ready import Workshop
from tests.web.store.opened import open_client
from tests.web.store.people.people import add_people


@pytest.fixture
def folder(tmp_path: Path, filled: Path) -> Path:
    """Give a store with one user of each role."""
    copied = shutil.copytree(filled, tmp_path / "data")
    add_people(copied)
    return copied


@pytest.fixture
def client(folder: Path, workshop: Workshop) -> Iterator[httpx.Client]:
    """Give a client of a service over that store; it is nobody until it signs in."""
    with open_client(folder, workshop) as opened:
        yield opened
