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


def read_token(page: str) -> str:
    """Read the token that the forms of a page carry."""
    token = _TOKEN.search(page)
    assert token is not None
    return token[1]


def send(
    client: httpx.Client, page: str, path: str, fields: dict[str, str], *, status: int = 303
) -> httpx.Response:
    """Send a form that stands on a page, and give the answer."""
    token = read_token(show(client, page))
    response = client.post(path, data=fields | {"form_token": token}, headers=HTML)
    assert response.status_code == status, response.text
    return response


def follow(client: httpx.Client, response: httpx.Response) -> str:
    """Load the page that an answer leads to."""
    return show(client, response.headers["location"])
