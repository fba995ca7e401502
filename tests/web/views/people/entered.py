"""Signing in as people do, by the page."""

from __future__ import annotations

import httpx

from tests.web.store.people.people import PASSWORD
from tests.web.views.opened import send


def sign_in_as(client: httpx.Client, name: str, password: str = PASSWORD) -> httpx.Response:
    """Fill the form in and send it."""
    return send(client, "/sign-in", "/sign-in", {"name": name, "password": password, "to": "/you"})
