from __future__ import annotations

import re

import httpx
import pytest

from tests.web.sent import problem_of
from tests.web.store.intake.test_photos import picture
from tests.web.store.opened import BOX, EMPTY_BOX, SPIKE
from tests.web.views.opened import HTML, follow, show

TABLE = f"/pack/table?container={EMPTY_BOX}"
FIELDS = {"container": EMPTY_BOX, "object_number": " 2026.3.1 ", "layer": "2", "role": "front"}


def post(
    client: httpx.Client,
    fields: dict[str, str],
    files: dict[str, tuple[str, bytes]] | None = None,
    accept: str = HTML["Accept"],
) -> httpx.Response:
    """Send the form of the table as a browser does, empty inputs of files included."""
    page = show(client, TABLE)
    token, key = (
        re.search(rf'name="{name}" value="([^"]+)"', page) for name in ("form_token", "key")
    )
    assert token is not None
    assert key is not None
    sent = {"photo": ("", b""), "gallery": ("", b"")} | (files or {})
    known = {"form_token": token[1], "key": key[1]} | fields
    return client.post("/pack/item", data=known, files=sent, headers={"Accept": accept})


@pytest.mark.parametrize("name", ["photo", "gallery"])
def test_a_form_puts_one_thing_in(client: httpx.Client, name: str) -> None:
    """From camera or gallery; the table shows it, and stays at its layer."""
    answer = post(client, FIELDS | {"title": " Net  needle "}, {name: ("image.jpg", picture())})
    assert answer.status_code == 303, answer.text
    assert answer.headers["location"] == f"{TABLE}&layer=2"
    page = follow(client, answer)
    assert "2026.3.1 is in, with a new record." in page
    assert "Net needle" in page
    assert "1 photo" in page


def test_what_was_done_is_told(client: httpx.Client) -> None:
    """Another photo, a known record, and a move have words of their own."""
    post(client, FIELDS)
    again = post(client, FIELDS, {"photo": ("a.jpg", picture())})
    assert "Another photo of 2026.3.1 is kept." in follow(client, again)
    moved = post(client, FIELDS | {"object_number": SPIKE, "move": "yes"})
    assert f"it was taken out of {BOX}" in follow(client, moved)
    client.post("/api/objects", json={"record": {"object_number": "2026.3.2"}})
    known = post(client, FIELDS | {"object_number": "2026.3.2"})
    assert "2026.3.2 is in.<" in follow(client, known)


@pytest.mark.parametrize(
    ("changed", "words"),
    [
        ({"object_number": " "}, "It needs a number"),
        ({"object_number": SPIKE}, "Tick below to move it here."),
        ({"layer": "none"}, "Layers are counted from 1"),
        ({"title": "x" * 1001}, "too long"),
        ({"hazard": "dragon"}, "no known hazard"),
    ],
)
def test_a_fault_stands_beside_its_field(
    client: httpx.Client, changed: dict[str, str], words: str
) -> None:
    """What was typed stays, and the photo is asked for once more."""
    answer = post(client, FIELDS | {"note": "in bag"} | changed, {"photo": ("a.jpg", picture())})
    assert answer.status_code == 422
    assert words in answer.text
    assert 'value="in bag"' in answer.text
    assert "Choose the photo once more" in answer.text


def test_a_broken_photo_is_told_at_its_field(client: httpx.Client) -> None:
    """And nothing of the thing is kept."""
    answer = post(client, FIELDS, {"photo": ("a.jpg", b"no photo")})
    assert "Choose another photo." in answer.text
    assert client.get("/api/objects/2026.3.1").status_code == 404


def test_the_same_form_twice_is_done_once(client: httpx.Client) -> None:
    """Pressed twice it does one thing; under the same key another thing is told."""
    for _ in range(2):
        assert post(client, FIELDS | {"key": "k"}).status_code == 303
    assert client.get(f"/api/containers/{EMPTY_BOX}").json()["revision"] == 1
    other = post(client, FIELDS | {"key": "k", "object_number": "2026.3.3"})
    assert "This was sent before." in other.text
    gone = post(client, FIELDS | {"container": "none"})
    assert gone.status_code == 404


def test_a_queue_is_answered_with_data(client: httpx.Client) -> None:
    """What came of it, or a problem with a code."""
    done = post(client, FIELDS, accept="application/json")
    assert (done.status_code, done.json()["revision"]) == (201, 1)
    bad = post(client, FIELDS | {"layer": "0"}, accept="application/json")
    assert problem_of(bad)["code"] == "unusable-field"
    elsewhere = post(client, FIELDS | {"object_number": SPIKE}, accept="application/json")
    assert problem_of(elsewhere)["code"] == "packed-elsewhere"
    foreign = post(client, FIELDS | {"form_token": "x"}, accept="application/json")
    assert foreign.status_code == 403
