from __future__ import annotations

import httpx
import pytest

from tests.web.store.opened import BOX
from tests.web.views.opened import show


def test_an_empty_store_shows_how_to_begin(empty: httpx.Client) -> None:
    """Three steps in their order, and the invented museum to try things out."""
    page = show(empty, "/")
    steps = ["Bring your records", "Pack a box", "Print its cards", "Take in the invented museum"]
    assert sorted(steps, key=page.index) == steps


@pytest.mark.slow
def test_what_is_to_be_done_is_told(client: httpx.Client) -> None:
    """Cards that were never printed and checks that were never done, with a way to each."""
    page = show(client, "/")
    assert "never printed" in page
    assert f'href="/containers/{BOX}"' in page
    assert "/print?what=lacking" in page
