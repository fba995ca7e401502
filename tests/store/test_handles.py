from __future__ import annotations

import sqlalchemy

from service.store import handles


def test_others_hold_the_store_by_these_names() -> None:
    """The handles are those of the library, which nobody else has to know."""
    assert handles.Engine is sqlalchemy.Engine
    assert handles.Connection is sqlalchemy.Connection
