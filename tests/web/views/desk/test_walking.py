from __future__ import annotations

import pytest
from starlette.requests import Request
from starlette.responses import Response

from service.keeping.printing.attach import ScannedCard
from service.web.views.desk.walking import (
    begin_walk,
    drop_held,
    end_walk,
    hold_card,
    read_held,
    read_walk,
)


def _come_back(response: Response) -> Request:
    """Send back the cookies that a reply has set."""
    pairs = [value.split(b";")[0] for name, value in response.raw_headers if name == b"set-cookie"]
    return Request({"type": "http", "headers": [(b"cookie", b"; ".join(pairs))]})


def test_the_run_and_the_card_in_hand_are_remembered() -> None:
    """A number may hold any sign."""
    card = ScannedCard('B/27 "ä"; x', 3, "KMTF")
    response = Response()
    begin_walk(response, 7)
    hold_card(response, card)
    request = _come_back(response)
    assert (read_walk(request), read_held(request)) == (7, card)


def test_ending_the_walk_forgets_both() -> None:
    """A cookie that is taken away is none."""
    response = Response()
    end_walk(response)
    drop_held(response)
    request = _come_back(response)
    assert (read_walk(request), read_held(request)) == (None, None)


@pytest.mark.parametrize("value", ["x", "[]", "[1, 2, 3]", '["B", "3", "K"]', "9" * 30])
def test_anything_else_is_nothing(value: str) -> None:
    """A cookie that we did not write shows nothing and breaks nothing."""
    headers = [(b"cookie", f"underlid-walk={value}; underlid-card={value}".encode())]
    request = Request({"type": "http", "headers": headers})
    assert (read_walk(request), read_held(request)) == (None, None)
