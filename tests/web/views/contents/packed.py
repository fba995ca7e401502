"""A container as its page shows it, and the fields that every change of its contents sends."""

from __future__ import annotations

import re
from html import unescape

import httpx

from service.records.record import PlaceRecord
from service.web.views.containers.contents import place_key
from tests.web.store.opened import BOX, SPIKE
from tests.web.views.opened import follow, send, show

_REVISION = re.compile(r'name="revision" value="(\d+)"')
SPIKE_KEY = place_key(PlaceRecord(SPIKE))


def page_of(client: httpx.Client, number: str = BOX) -> str:
    """Load the page of a container."""
    return show(client, f"/containers/{number}")


def fields_of(client: httpx.Client, number: str = BOX, key: str = "") -> dict[str, str]:
    """Give what a form of the container's page sends besides what is typed."""
    found = _REVISION.search(page_of(client, number))
    assert found is not None
    return {"number": number, "revision": found[1], "key": key}


def change(
    client: httpx.Client, path: str, typed: dict[str, str], *, status: int = 303, **of: str
) -> str:
    """Send a form of a container's page and give the page that comes of it.

    `number` and `key` say of which container and which object in it, else of the filled box.
    """
    number = of.get("number", BOX)
    fields = fields_of(client, number, of.get("key", "")) | typed
    answer = send(client, f"/containers/{number}", path, fields, status=status)
    return follow(client, answer) if status == 303 else answer.text


def undo(client: httpx.Client, page: str) -> str:
    """Press the button that takes the last change back."""
    form = page.split('id="notice"')[1].split("<form", 1)[1].split("</form>", 1)[0]
    path = re.findall(r'action="([^"]+)"', form)[0]
    fields = {
        name: unescape(text) for name, text in re.findall(r'name="([^"]+)" value="([^"]*)"', form)
    }
    return follow(client, send(client, "/you", path, fields))


def places_of(client: httpx.Client, number: str = BOX) -> list[tuple[str, int]]:
    """Give the objects of a container, with their layers, in the order of its packing."""
    found = client.get(f"/api/containers/{number}/packings").json()["packings"]
    if not found:
        return []
    path = f"/api/containers/{number}/packings/{found[0]['revision']}"
    places = client.get(path).json()["packing"]["places"]
    return [(place["object_number"], place["layer"]) for place in places]
