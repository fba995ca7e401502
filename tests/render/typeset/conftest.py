"""One typesetter with the shipped fonts, for all tests of set lines."""

from __future__ import annotations

import pytest

from service.render.task import FONTS_CONF
from service.render.typeset.setter import Typesetter


@pytest.fixture(scope="session")
def setter() -> Typesetter:
    """Load the shipped fonts once."""
    return Typesetter(FONTS_CONF)
