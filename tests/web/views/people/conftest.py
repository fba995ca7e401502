"""A service over a store with one user of each role, beside the one of nobody."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import httpx
import pytest

from service.keeping.sharing.reach import Reach
from service.pipeline.ready import Workshop
from service.web.app import Front
from tests.web.store.opened import MOMENT, open_client
from tests.web.store.people.people import add_people

ADDRESS = "https://192.168.1.20:8000"


@pytest.fixture
def staffed(tmp_path: Path, filled: Path, workshop: Workshop) -> Iterator[httpx.Client]:
    """Give a client that is nobody until it signs in; others on the network are answered, too."""
    folder = shutil.copytree(filled, tmp_path / "staffed")
    add_people(folder)
    front = Front(frozenset({"cards.museum.example"}), reach=Reach((ADDRESS,), "AB:CD", MOMENT))
    with open_client(folder, workshop, front=front) as opened:
        opened.headers["Origin"] = str(opened.base_url).rstrip("/")
        yield opened
