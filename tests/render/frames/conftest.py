"""One child process that measures, for all tests of frames."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from service.render.task import ENVIRONMENT
from service.render.worker import Workers


@pytest.fixture(scope="session")
def workers() -> Iterator[Workers]:
    """Give the process that measures."""
    with Workers(1, environment=ENVIRONMENT, tasks_per_process=100) as made:
        yield made
