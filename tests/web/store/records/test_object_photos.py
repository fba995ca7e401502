from __future__ import annotations

import io

import httpx
import pytest
from PIL import Image

from tests.web.sent import PHOTOS, problem_of
from tests.web.store.opened import SPIKE, seen

PATH = f"/api/objects/{SPIKE}/photos"


@pytest.fixture
def sha256(client: httpx.Client) -> str:
    """Bring two photos, and give the hash of the first."""
    names = ("1931.14.7_front.jpg", "X.112_front.jpg")
    sent = [
        ("photos", (f"{SPIKE}_{at}.jpg", (PHOTOS / name).read_bytes()))
        for at, name in enumerate(names)
    ]
    assert client.post("/api/photos", files=sent).json()["new"] == 2
    first: str = client.get(PATH).json()["photos"][0]["sha256"]
    return first


def test_a_photo_is_shown_otherwise(client: httpx.Client, sha256: str) -> None:
    """A change names the state that was seen; what it leaves out stays."""
    path = f"{PATH}/{sha256}"
    state = client.get(path)
    assert problem_of(client.patch(path, json={"turns": 1}))["code"] == "if-match-missing"
    crop = {"left": 0.25, "top": 0, "right": 1, "bottom": 1}
    changed = client.patch(path, json={"turns": 1, "crop": crop}, headers=seen(state))
    assert changed.json() == {**state.json(), "turns": 1, "crop": crop}
    stale = problem_of(client.patch(path, json={"turns": 2}, headers=seen(state)))
    assert (stale["code"], stale["yours"], stale["current"]["turns"]) == ("stale", {"turns": 2}, 1)
    off = client.patch(path, json={"is_printed": False}, headers=seen(client.get(path)))
    assert (off.json()["turns"], off.json()["is_printed"]) == (1, False)


@pytest.mark.parametrize(
    ("body", "code"),
    [
        ({"turns": 4}, "unusable-field"),
        ({"crop": {"left": 0, "top": 0, "right": 1.5, "bottom": 1}}, "unusable-field"),
        ({"crop": {"left": 0, "top": 0, "right": 0.001, "bottom": 1}}, "unusable-crop"),
        ({"role": "side"}, "unusable-field"),
    ],
)
def test_what_cannot_be_shown_is_refused(
    client: httpx.Client, sha256: str, body: dict[str, object], code: str
) -> None:
    """With a code, and nothing is changed."""
    path = f"{PATH}/{sha256}"
    state = client.get(path)
    problem = problem_of(client.patch(path, json=body, headers=seen(state)))
    assert (problem["code"], problem["status"]) == (code, 422)
    assert client.get(path).json() == state.json()


def test_photos_are_put_in_order(client: httpx.Client, sha256: str) -> None:
    """From the order that was seen."""
    other = client.get(PATH).json()["photos"][1]["sha256"]
    body = {"order": [other, sha256]}
    turned = client.put(PATH, json=body, headers=seen(client.get(PATH))).json()
    assert [one["sha256"] for one in turned["photos"]] == [other, sha256]
    assert problem_of(client.put(PATH, json=body))["code"] == "if-match-missing"
    lost = client.put(PATH, json={"order": ["0" * 64]}, headers=seen(client.get(PATH)))
    assert problem_of(lost)["code"] == "not-in-store"


def test_a_browser_gets_pictures(client: httpx.Client, sha256: str) -> None:
    """A JPEG that is what it says and tells nothing; whole, or as the object shows it."""
    path = f"/api/photos/{sha256}"
    for query in ({"width_px": "200"}, {"width_px": "200", "object": SPIKE}):
        for _ in ("made", "kept"):
            reply = client.get(path, params=query)
            assert reply.headers["content-type"] == "image/jpeg"
            assert reply.headers["x-content-type-options"] == "nosniff"
            with Image.open(io.BytesIO(reply.content)) as opened:
                assert (opened.format, dict(opened.getexif())) == ("JPEG", {})
                assert opened.width >= 200
    for wrong in (f"/api/photos/{'0' * 64}", f"{path}?object=X.112"):
        assert problem_of(client.get(wrong))["code"] == "not-in-store"
    for wrong in ("/api/photos/store.db", f"{path}?width_px=0"):
        assert problem_of(client.get(wrong))["code"] == "unusable-field"
