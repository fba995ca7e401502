"""One service for all tests of the edge, as `serve` opens it, on a free port of the loopback."""

from __future__ import annotations

from collections.abc import Iterator

import httpx
import pytest

from service.config import Settings
from service.web.server import open_server
from tests.web.sent import running


@pytest.fixture(scope="session")
def client(tmp_path_factory: pytest.TempPathFactory) -> Iterator[httpx.Client]:
    """Give a client of a whole service with real presses."""
    settings = Settings(port=0, data=tmp_path_factory.mktemp("data"))
    with open_server(settings) as (server, listener), running(server, listener) as opened:
        yield opened
