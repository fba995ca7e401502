"""A service with people in its store; `folder` is where that lies."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import httpx
import pytest

from service.pipeline.ready import Workshop
from tests.web.store.conftest import filled, workshop
from tests.web.store.opened import open_client
from tests.web.store.people.people import add_people

__all__ = ["filled", "workshop"]


@pytest.fixture(scope="module")
def peopled(tmp_path_factory: pytest.TempPathFactory, filled: Path) -> Path:
    """Fill one store with people, to be copied."""
    folder = shutil.copytree(filled, tmp_path_factory.mktemp("peopled") / "data")
    add_people(folder)
    return folder


@pytest.fixture
def folder(tmp_path: Path, peopled: Path) -> Path:
    """Give a store of its own with people in it."""
    return shutil.copytree(peopled, tmp_path / "data")


@pytest.fixture
def client(folder: Path, workshop: Workshop) -> Iterator[httpx.Client]:
    """Give a client of a service over that store; it is nobody until it signs in."""
    with open_client(folder, workshop) as opened:
        yield opened
