"""Tests for the paths of pictures of cards, with real ink."""

from __future__ import annotations

import io

import httpx
import pytest
from PIL import Image

from tests.web.sent import problem_of
from tests.web.store.opened import BOX, LAMP
from tests.web.store.packings.test_moves import MOVE

pytestmark = pytest.mark.print

LID = f"/api/containers/{BOX}/preview"


def size_of(reply: httpx.Response) -> tuple[int, int]:
    """Give the size of a picture."""
    assert reply.status_code == 200, reply.text
    return Image.open(io.BytesIO(reply.content)).size


def test_a_card_is_drawn_until_it_says_something_else(client: httpx.Client) -> None:
    """The same picture is not sent twice; taking an object out gives another one."""
    first = client.get(LID, params={"kind": "end-label", "width_px": 500})
    assert size_of(first)[0] == 500
    tag = {"If-None-Match": first.headers["etag"]}
    params = {"kind": "end-label", "width_px": "500"}
    again = client.get(LID, params=params, headers=tag)
    assert (again.status_code, again.content) == (304, b"")
    assert again.headers["etag"] == first.headers["etag"]
    lid = client.get(LID, headers={"If-None-Match": f'W/{first.headers["etag"]}, "x"'})
    assert size_of(lid)[0] == 900
    moved = client.post("/api/moves", json=MOVE)
    assert moved.status_code < 300, moved.text
    assert client.get("/api/prints").json()["runs"] == []
    after = client.get(LID, headers={"If-None-Match": lid.headers["etag"]})
    assert size_of(after)[0] == 900
    assert after.content != lid.content


def test_the_cards_of_a_box_are_listed_with_their_pictures(client: httpx.Client) -> None:
    """Every link leads to a picture in the proportions that were told."""
    listed = client.get(f"/api/containers/{BOX}/previews").json()
    assert [(card["kind"], card["side"]) for card in listed["cards"]] == [
        ("lid-card", 1),
        ("end-label", 1),
        ("end-label", 2),
        ("contents-list", 1),
    ]
    for card in listed["cards"]:
        for page in card["pages"]:
            reply = client.get(page["href"] + "&width_px=300")
            assert reply.headers["underlid-pages"] == str(len(card["pages"]))
            width_mm, height_mm = page["size_mm"]
            assert abs(size_of(reply)[1] - 300 * height_mm / width_mm) <= 1


def test_the_tag_of_an_object_is_drawn(client: httpx.Client) -> None:
    """A number may hold a slash; an object that lies nowhere has a tag, too."""
    assert size_of(client.get(f"/api/objects/{LAMP}/preview?width_px=240"))[0] == 240
    made = client.post("/api/objects", json={"record": {"object_number": "L/7", "title": "Oar"}})
    assert made.status_code == 201
    assert size_of(client.get("/api/objects/L/7/preview"))[0] == 900
    assert problem_of(client.get("/api/objects/L/8/preview"))["code"] == "not-in-store"


@pytest.mark.parametrize(
    ("path", "code"),
    [
        ("/api/containers/B-999/preview", "not-in-store"),
        ("/api/containers/B-999/previews", "not-in-store"),
        (f"{LID}?kind=cover-card", "not-in-store"),
        (f"{LID}?kind=object-tag", "not-in-store"),
        (f"{LID}?kind=end-label&side=3", "not-in-store"),
        (f"{LID}?page=2", "not-in-store"),
        (f"{LID}?kind=postcard", "unknown-card-kind"),
        (f"{LID}?page=0", "unusable-field"),
        (f"{LID}?width_px=2401", "unusable-field"),
        (f"{LID}?width_px=1", "unusable-field"),
        (f"{LID}?paper=A3", "unusable-field"),
        (f"{LID}?kind=end-label&paper=Letter&page=9", "not-in-store"),
    ],
)
def test_what_cannot_be_shown_is_told(client: httpx.Client, path: str, code: str) -> None:
    """Each refusal is a problem with its code."""
    assert problem_of(client.get(path))["code"] == code
