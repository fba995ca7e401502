from __future__ import annotations

import hashlib
import io

import httpx
from PIL import Image

from tests.web.store.opened import LAMP
from tests.web.views.opened import show


def test_a_photo_is_shown_small(client: httpx.Client) -> None:
    """The page names it by its content, and it comes as a small JPEG, the second time too."""
    drawn = io.BytesIO()
    Image.effect_noise((900, 700), 60).convert("RGB").save(drawn, "JPEG")
    file = (f"{LAMP}_front.jpg", drawn.getvalue(), "image/jpeg")
    brought = client.post("/api/photos", files={"photos": file})
    assert brought.json()["new"] == 1
    path = f"/checks/photo/{hashlib.sha256(drawn.getvalue()).hexdigest()}"
    assert f'src="{path}"' in show(client, "/checks/look?container=B-027")
    first, second = client.get(path), client.get(path)
    assert first.headers["content-type"] == "image/jpeg"
    assert first.content == second.content
    with Image.open(io.BytesIO(first.content)) as picture:
        assert max(picture.size) <= 1123


def test_other_addresses_hold_nothing(client: httpx.Client) -> None:
    """A content nobody brought, and what is no content."""
    assert client.get(f"/checks/photo/{'0' * 64}").status_code == 404
    assert client.get("/checks/photo/etc").status_code == 422
