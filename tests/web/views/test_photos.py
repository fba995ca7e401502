from __future__ import annotations

import io

import httpx
from PIL import Image

from tests.web.sent import problem_of
from tests.web.store.opened import BOX, SPIKE
from tests.web.views.opened import show


def test_a_photo_is_shown_small(client: httpx.Client) -> None:
    """On the page of its container, from an address that names its content."""
    stream = io.BytesIO()
    Image.effect_noise((900, 600), 80).save(stream, "JPEG")
    files = {"photos": (f"{SPIKE}.jpg", stream.getvalue(), "image/jpeg")}
    assert client.post("/api/photos", files=files).status_code == 200
    page = show(client, f"/containers/{BOX}")
    address = page.split('src="/photos/')[1].split('"')[0]
    answer = client.get(f"/photos/{address}")
    assert answer.headers["content-type"] == "image/jpeg"
    assert "private" in answer.headers["cache-control"]
    with Image.open(io.BytesIO(answer.content)) as image:
        assert max(image.size) < 900


def test_what_is_no_photo_is_not_found(client: httpx.Client) -> None:
    """Neither an unknown content nor anything else."""
    assert problem_of(client.get(f"/photos/{'0' * 64}"))["status"] == 404
    assert problem_of(client.get("/photos/..%2Fstore.db"))["status"] in {404, 422}
