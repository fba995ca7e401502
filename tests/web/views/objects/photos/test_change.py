from __future__ import annotations

import html
import io
import re

import httpx
import pytest
from PIL import Image

from service.web.views.objects.photos.page import page_of_shown
from tests.web.store.opened import SPIKE
from tests.web.views.objects.photos.test_add import post, shas_of
from tests.web.views.opened import follow, send


@pytest.fixture
def photos(client: httpx.Client) -> list[str]:
    """Give the object three photos, and name them."""
    for shade in (60, 120, 180):
        stream = io.BytesIO()
        Image.new("RGB", (400, 300), (shade,) * 3).save(stream, "JPEG")
        post(client, stream.getvalue())
    return shas_of(client)


def state(client: httpx.Client, sha256: str) -> dict[str, object]:
    """Read how the object shows a photo."""
    read: dict[str, object] = client.get(f"/api/objects/{SPIKE}/photos/{sha256}").json()
    return read


def send_form(client: httpx.Client, path: str, sha256: str, **fields: str) -> httpx.Response:
    """Send one of the forms of the photo's page."""
    page = page_of_shown(SPIKE, sha256)
    return send(client, page, path, {"number": SPIKE, "photo": sha256, **fields})


def undo(client: httpx.Client, page: str) -> None:
    """Press Undo on a page."""
    notice = page.split('id="notice"')[1].split("</form>", maxsplit=1)[0]
    action = re.search(r'action="([^"]+)"', notice)
    assert action is not None
    fields = dict(re.findall(r'name="(\w+)" value="([^"]*)"', notice))
    known = {name: html.unescape(text) for name, text in fields.items() if name != "form_token"}
    send(client, page_of_shown(SPIKE, known["photo"]), action[1], known)


@pytest.mark.parametrize(
    ("name", "value", "words"),
    [
        ("turns", "1", "turned"),
        ("role", "detail", "shows the detail"),
        ("is_printed", "false", "kept off cards"),
        ("is_removed", "true", "removed from its object"),
    ],
)
def test_each_change_is_told_and_taken_back(
    client: httpx.Client, photos: list[str], name: str, value: str, words: str
) -> None:
    """One thing at a time; the rest of what is shown stays."""
    before = state(client, photos[0])
    page = follow(client, send_form(client, "/photo/change", photos[0], **{name: value}))
    assert words in page
    assert str(state(client, photos[0])[name]).lower() == value
    undo(client, page)
    assert state(client, photos[0]) == before


def test_a_part_is_shown_and_the_whole_again(client: httpx.Client, photos: list[str]) -> None:
    """By four numbers in per cent."""
    cuts = {"left": "10", "top": "0", "right": "25", "bottom": "50"}
    answer = send_form(client, "/photo/crop", photos[0], **cuts)
    crop = state(client, photos[0])["crop"]
    assert crop == {"left": 0.1, "top": 0.0, "right": 0.75, "bottom": 0.5}
    undo(client, follow(client, answer))
    assert state(client, photos[0])["crop"] is None


@pytest.mark.parametrize("cuts", [{"left": "60", "right": "50"}, {"left": "99", "right": "0.5"}])
def test_too_little_left_is_told(
    client: httpx.Client, photos: list[str], cuts: dict[str, str]
) -> None:
    """Nothing, or fewer pixels than can be printed."""
    page = page_of_shown(SPIKE, photos[0])
    fields = {"number": SPIKE, "photo": photos[0], **cuts}
    answer = send(client, page, "/photo/crop", fields, status=422)
    assert 'value="' + cuts["left"] in answer.text
    assert state(client, photos[0])["crop"] is None


def test_photos_change_their_order(client: httpx.Client, photos: list[str]) -> None:
    """The last one comes first, and goes back."""
    answer = send_form(client, "/photo/move", photos[2], to="0")
    assert shas_of(client) == [photos[2], *photos[:2]]
    undo(client, follow(client, answer))
    assert shas_of(client) == photos
