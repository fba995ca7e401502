from __future__ import annotations

import httpx
import pytest

from tests.web.views.opened import follow, send


@pytest.mark.slow
def test_the_invented_museum_is_taken_into_an_empty_store(empty: httpx.Client) -> None:
    """Its boxes are there, and the offer is gone."""
    page = follow(empty, send(empty, "/", "/start/demo", {}))
    assert "Everything in it is invented" in page
    assert "never printed" in page
    assert "Take in the invented museum" not in page


def test_it_is_not_mixed_with_what_is_there(client: httpx.Client) -> None:
    """A store that holds something is left as it is."""
    answer = send(client, "/you", "/start/demo", {}, status=409)
    assert "not empty" in answer.text
