from __future__ import annotations

import base64
import json

import httpx
import pytest

from service.web.views.shell.notice import COOKIE, Notice, Undo, go_to
from tests.web.views.opened import follow, send, show


def test_a_notice_is_told_once(client: httpx.Client) -> None:
    """The page after a change says what was done; loading it again does not."""
    answer = send(client, "/you", "/you", {"name": "Ida Hale"})
    assert "under the name Ida Hale" in follow(client, answer)
    assert "under the name Ida Hale" not in show(client, "/containers")


@pytest.mark.parametrize(
    "said",
    [
        {"words": "x", "undo": {"path": "//elsewhere", "fields": {}}},
        {"words": "x", "undo": {"path": "/here", "fields": {"a": 1}}},
        {"undo": None},
        [],
        "x",
    ],
    ids=["other host", "no text", "no words", "list", "text"],
)
def test_a_forged_notice_counts_as_none(client: httpx.Client, said: object) -> None:
    """A cookie that is not as we write it shows nothing and breaks nothing."""
    client.cookies.set(COOKIE, base64.urlsafe_b64encode(json.dumps(said).encode()).decode())
    assert 'class="notice"' not in show(client, "/containers")


def test_a_notice_too_long_for_a_cookie_is_cut(client: httpx.Client) -> None:
    """Browsers drop cookies of more than 4,096 bytes, and the notice with them."""
    long = Notice("w" * 5000, Undo("/x", {"a": "b" * 5000}))
    assert len(go_to("/", long).headers["set-cookie"]) < 4096
    assert client.get("/health").status_code == 200
