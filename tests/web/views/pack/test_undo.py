from __future__ import annotations

import html
import re

import httpx

from tests.web.store.opened import EMPTY_BOX, SPIKE
from tests.web.views.opened import follow, send
from tests.web.views.pack.test_item import FIELDS, TABLE, post


def fields_of_undo(page: str) -> dict[str, str]:
    """Read the form of the notice."""
    form = page.split('action="/pack/undo"', 1)[1].split("</form>", 1)[0]
    found = re.findall(r'name="(\w+)" value="([^"]*)"', form)
    return {name: html.unescape(value) for name, value in found if name != "form_token"}


def test_what_was_put_in_is_taken_back(client: httpx.Client) -> None:
    """Twice it is told that nothing was changed."""
    page = follow(client, post(client, FIELDS | {"object_number": SPIKE, "move": "yes"}))
    fields = fields_of_undo(page)
    back = follow(client, send(client, TABLE, "/pack/undo", fields))
    assert f"{SPIKE} is taken back." in back
    places = client.get(f"/api/objects/{SPIKE}/places").json()["places"]
    assert [one["container_number"] for one in places] == ["B-027"]
    again = follow(client, send(client, TABLE, "/pack/undo", fields))
    assert "nothing was changed" in again
    assert client.get(f"/api/containers/{EMPTY_BOX}").json()["revision"] == 2
