from __future__ import annotations

import io

import httpx
from PIL import Image

from tests.web.sent import problem_of
from tests.web.store.opened import SPIKE


def test_a_photo_is_shown_small(client: httpx.Client) -> None:
    """From an address that names its content."""
    stream = io.BytesIO()
    Image.effect_noise((900, 600), 80).save(stream, "JPEG")
    files = {"photo": ("image.jpg", stream.getvalue(), "image/jpeg")}
    fields = {"object_number": SPIKE, "layer": "1"}
    told = client.post("/api/containers/B-027/items", data=fields, files=files).json()
    answer = client.get(f"/photos/{told['photo_sha256']}")
    assert answer.headers["content-type"] == "image/jpeg"
    assert "private" in answer.headers["cache-control"]
    with Image.open(io.BytesIO(answer.content)) as image:
        assert max(image.size) < 900


def test_what_is_no_photo_is_not_found(client: httpx.Client) -> None:
    """Neither an unknown content nor anything else."""
    assert problem_of(client.get(f"/photos/{'0' * 64}"))["status"] == 404
    assert problem_of(client.get("/photos/..%2Fstore.db"))["status"] in {404, 422}
