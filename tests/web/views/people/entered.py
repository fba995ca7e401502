"""Signing in as people do, by the page."""

from __future__ import annotations

import re

import httpx

from tests.web.store.people.people import PASSWORD
from tests.web.views.opened import send


def sign_in_as(client: httpx.Client, name: str, password: str = PASSWORD) -> httpx.Response:
    """Fill the form in and send it."""
    return send(client, "/sign-in", "/sign-in", {"name": name, "password": password, "to": "/you"})


def form_token_of(page: str) -> str:
    """Read the token of the forms of a page."""
    found = re.search(r'name="form_token" value="([^"]+)"', page)
    assert found is not None
    return found[1]
