from __future__ import annotations

import pytest
from starlette.requests import Request

from service.web.views.desk.asked import Asked, What, read_asked


def _ask(query: str) -> Asked:
    return read_asked(Request({"type": "http", "query_string": query.encode(), "headers": []}))


@pytest.mark.parametrize(
    ("query", "what"),
    [
        ("", What.NOTHING),
        ("what=reprints", What.REPRINTS),
        ("what=poster", What.NOTHING),
        ("containers=B-1&containers=B-2", What.CONTAINERS),
        ("objects=X.1", What.OBJECTS),
        ("card=7", What.CARD),
        ("card=seven", What.NOTHING),
        ("card=99999999999", What.NOTHING),
    ],
)
def test_what_is_wanted_is_read_or_guessed(query: str, what: What) -> None:
    """A link from another page need only name what it is about."""
    assert _ask(query).what is what


def test_numbers_stand_once_each() -> None:
    """Choosing a box twice prints it once."""
    assert _ask("containers=B-1&containers=&containers=B-1").containers == ("B-1",)
