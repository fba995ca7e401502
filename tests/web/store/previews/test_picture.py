"""Tests for the reply that carries a picture."""

from __future__ import annotations

from typing import cast

import pytest

from service.web.store.counter import Counter
from service.web.store.previews.picture import Looking


def looking(*known: str) -> Looking:
    """Ask for a picture; the counter is not needed for the reply."""
    return Looking(cast("Counter", None), 900, frozenset(known))


def test_a_picture_comes_with_its_tag() -> None:
    """It may be kept by the browser, which asks each time whether it still holds."""
    reply = looking().answer("abc", lambda: b"\x89PNG")
    assert (reply.status_code, reply.body) == (200, b"\x89PNG")
    assert reply.headers["etag"] == '"abc"'
    assert reply.headers["content-type"] == "image/png"
    assert "no-cache" in reply.headers["cache-control"]


def test_a_picture_that_is_known_is_not_drawn() -> None:
    """The reply has no body, and the same tag; another tag is drawn."""

    def draw() -> bytes:
        pytest.fail("it was drawn")

    reply = looking("xyz", "abc").answer("abc", draw)
    assert (reply.status_code, reply.body) == (304, b"")
    assert reply.headers["etag"] == '"abc"'
    assert looking("xyz").answer("abc", lambda: b"new").body == b"new"
