from __future__ import annotations

import re

import httpx
import pytest
from fastapi import Request

from service.web.access.porter import Porter
from service.web.replies.refusals import RefusedError
from service.web.views.patterns.page import FIELDS, LONG_NUMBER, MARKS, patterns
from tests.web.views.opened import show


def test_every_piece_is_shown(client: httpx.Client) -> None:
    """Long numbers, writing from right to left, eight marks, all states, every field's fault."""
    page = show(client, "/patterns")
    assert LONG_NUMBER in page
    assert "بوصلة" in page
    assert len(MARKS) == page.count('class="mark"') == 8
    for state in ("wrong", "care", "fine", "open"):
        assert f'class="state {state}"' in page
    for name in FIELDS:
        assert f'id="fault-{name}"' in page
    assert len(page.encode()) < 150_000


def test_all_it_shows_can_be_named(client: httpx.Client) -> None:
    """No two things have one name, and each label belongs to a field."""
    page = show(client, "/patterns")
    names = re.findall(r'\bid="([^"]+)"', page)
    assert sorted(names) == sorted(set(names))
    assert set(re.findall(r'\bfor="([^"]+)"', page)) <= set(names)


def test_it_is_not_for_other_machines() -> None:
    """Whoever asks from elsewhere finds nothing there."""
    things = {"porter": Porter(None, is_local=False)}
    request = Request({"type": "http", "headers": [], "underlid": things})
    with pytest.raises(RefusedError):
        patterns(request)
