from __future__ import annotations

import httpx

from service.keeping.photos.sources import FILE_LIMIT_BYTES
from tests.web.store.intake.test_photos import picture
from tests.web.store.opened import SPIKE
from tests.web.views.opened import HTML, follow, show

PAGE = f"/objects/{SPIKE}"


def post(client: httpx.Client, *photos: bytes, number: str = SPIKE) -> httpx.Response:
    """Send photos from the page of an object."""
    token = show(client, PAGE).split('name="form_token" value="')[1].split('"')[0]
    files = [("photos", ("image.jpg", data)) for data in photos] or [("photos", ("", b""))]
    fields = {"form_token": token, "number": number, "role": "back"}
    return client.post("/add/photos", data=fields, files=files, headers=HTML)


def shas_of(client: httpx.Client) -> list[str]:
    """Name the photos of the object, in order."""
    shown = client.get(f"/api/objects/{SPIKE}/photos").json()["photos"]
    return [one["sha256"] for one in shown]


def test_several_photos_are_added(client: httpx.Client) -> None:
    """All called alike; one that is none is told of, and costs the others nothing."""
    page = follow(client, post(client, picture(), picture() + b"other", b"no photo"))
    assert "2 photos added." in page
    assert "Open the photo, save it again as JPEG" in page
    assert len(shas_of(client)) == 2


def test_what_cannot_be_used_is_told_at_the_field(client: httpx.Client) -> None:
    """Nothing chosen, nothing usable, too large, or no such object."""
    assert "Choose a photo." in post(client).text
    assert post(client, b"no photo").status_code == 422
    assert "25 MB" in post(client, b"\xff" * (FILE_LIMIT_BYTES + 1)).text
    assert post(client, picture(), number="none").status_code == 404
    assert shas_of(client) == []
