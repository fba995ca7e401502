from __future__ import annotations

import io
import zipfile

import httpx
from PIL import Image

from tests.web.sent import problem_of
from tests.web.store.opened import SPIKE


def picture() -> bytes:
    """Give a plain photo."""
    stream = io.BytesIO()
    Image.new("RGB", (400, 300), "#808080").save(stream, "JPEG")
    return stream.getvalue()


def test_photos_go_to_their_objects(client: httpx.Client) -> None:
    """By their names; what fits nothing is a finding; the same again is nothing new."""
    files = [
        ("photos", (f"{SPIKE}_front.jpg", picture())),
        ("photos", ("../holiday.jpg", picture())),
    ]
    first = client.post("/api/photos", files=files)
    assert first.status_code == 200
    assert [one["object_number"] for one in first.json()["matched"]] == [SPIKE]
    assert [one["code"] for one in first.json()["findings"]][-1] == "photo-not-named"
    assert client.post("/api/photos", files=files).json()["new"] == 0


def test_a_packed_folder_is_taken(client: httpx.Client) -> None:
    """One ZIP file holds as many as it likes, within limits."""
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w") as packed:
        packed.writestr(f"box/{SPIKE} back.jpg", picture())
    reply = client.post("/api/photos", files={"photos": ("photos.zip", stream.getvalue())}).json()
    assert [(one["object_number"], one["role"]) for one in reply["matched"]] == [(SPIKE, "back")]
    bad = client.post("/api/photos", files={"photos": ("photos.zip", b"no zip")})
    assert problem_of(bad)["code"] == "unreadable-file"


def test_names_that_came_twice_are_told(client: httpx.Client) -> None:
    """Which of the two was meant nobody can say: the second one is left out."""
    files = [("photos", (name, picture())) for name in (f"{SPIKE}.jpg", f"x/{SPIKE}.jpg")]
    reply = client.post("/api/photos", files=files).json()
    assert [one["code"] for one in reply["findings"]] == ["photo-unusable"]
    assert reply["new"] == 1
