from __future__ import annotations

import httpx

from tests.web.store.people.people import ADA
from tests.web.views.opened import show
from tests.web.views.people.conftest import ADDRESS
from tests.web.views.people.entered import sign_in_as


def test_what_others_type_and_compare_is_shown(staffed: httpx.Client) -> None:
    """As soon as sharing is on."""
    sign_in_as(staffed, ADA)
    page = show(staffed, "/share")
    assert ADDRESS in page
    assert "<span>AB</span> <span>CD</span>" in page
    assert "service share" not in page


def test_before_that_the_way_there_is_shown(client: httpx.Client) -> None:
    """The command, and what it will ask for the first time."""
    page = show(client, "/share")
    assert "python3 -m service share" in page
    assert "first manager" in page
    assert "Without https" in page
