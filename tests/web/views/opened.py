"""A browser as far as HTTP goes: keeps cookies, asks for HTML, and sends forms with their token."""

from __future__ import annotations

import re

import httpx

HTML = {"Accept": "text/html"}
_TOKEN = re.compile(r'name="form_token" value="([^"]+)"')


def show(client: httpx.Client, path: str, *, status: int = 200) -> str:
    """Load a page and give its text."""
    response = client.get(path, headers=HTML)
    assert response.status_code == status, response.text
    assert response.headers["content-type"].startswith("text/html")
    return response.text


def send(
    client: httpx.Client, page: str, path: str, fields: dict[str, str], *, status: int = 303
) -> httpx.Response:
    """Send a form that stands on a page, and give the answer."""
    token = _TOKEN.search(show(client, page))
    assert token is not None
    response = client.post(path, data=fields | {"form_token": token[1]}, headers=HTML)
    assert response.status_code == status, response.text
    return response


def follow(client: httpx.Client, response: httpx.Response) -> str:
    """Load the page that an answer leads to."""
    return show(client, response.headers["location"])
