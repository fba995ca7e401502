from __future__ import annotations

import httpx

from service.web.views.objects.photos.page import page_of_shown
from tests.web.store.intake.test_photos import picture
from tests.web.store.opened import SPIKE
from tests.web.views.objects.photos.test_add import post, shas_of
from tests.web.views.opened import show


def test_a_photo_is_shown_whole_and_as_cards_show_it(client: httpx.Client) -> None:
    """With what can be done to it; both pictures can be loaded."""
    post(client, picture())
    (sha256,) = shas_of(client)
    page = show(client, page_of_shown(SPIKE, sha256))
    assert "Turn right" in page
    assert "Remove it" in page
    for address in (part.split('"')[0] for part in page.split('src="/api/photos/')[1:]):
        answer = client.get(f"/api/photos/{address.replace('&amp;', '&')}")
        assert answer.headers["content-type"] == "image/jpeg"


def test_an_unknown_photo_is_told(client: httpx.Client) -> None:
    """So is one without a name."""
    show(client, page_of_shown(SPIKE, "0" * 64), status=404)
    show(client, "/photo", status=404)
