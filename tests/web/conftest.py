"""One service for all tests of the edge, on a free port of the loopback.

It keeps no store: tasks are done in one place of a process, which tests of tasks need.
"""

from __future__ import annotations

from collections.abc import Iterator

import httpx
import pytest

from service.config import Settings
from service.web.app import make_app
from service.web.press import open_presses
from tests.web.sent import running_app


@pytest.fixture(scope="session")
def client(tmp_path_factory: pytest.TempPathFactory) -> Iterator[httpx.Client]:
    """Give a client of a service with real presses."""
    settings = Settings(data=tmp_path_factory.mktemp("data"))
    with (
        open_presses(settings) as presses,
        running_app(make_app(presses, settings.host)) as opened,
    ):
        yield opened
