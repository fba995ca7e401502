"""One child process that draws, for all tests of ink."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from tests.render.made import Ink, ink_process


@pytest.fixture(scope="session")
def ink() -> Iterator[Ink]:
    """Give the process that draws."""
    with ink_process() as made:
        yield made
