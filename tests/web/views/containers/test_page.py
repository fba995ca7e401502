from __future__ import annotations

import io
from html import unescape
from urllib.parse import quote

import httpx
import pytest
from PIL import Image

from tests.web.store.opened import BOX, EMPTY_BOX, LAMP, SPIKE
from tests.web.views.contents.packed import SPIKE_KEY
from tests.web.views.opened import show

HOSTILE = '"><script>alert(1)</script>'


def test_a_container_tells_all_that_is_known(client: httpx.Client) -> None:
    """Number, warnings, contents with their places, cards, and where to go from here."""
    page = show(client, f"/containers/{BOX}")
    assert f'<h1 class="plate"><b>{BOX}</b>' in page
    assert page.index("Before you lift or open it") < page.index("What lies in it")
    assert "confirmed" in page
    assert f'href="/objects/{LAMP}"' in page
    assert ">A2</b>" in page
    assert f'href="/print?containers={BOX}"' in page
    assert f'href="/history/container/{BOX}"' in page
    assert f'href="/checks/look?container={BOX}"' in page
    assert f'href="/api/containers/{BOX}"' in page


def test_forms_begin_with_the_revision_that_is_shown(client: httpx.Client) -> None:
    """Of a container that was never packed it is 0."""
    assert 'name="revision" value="1"' in show(client, f"/containers/{BOX}")
    page = show(client, f"/containers/{EMPTY_BOX}")
    assert 'name="revision" value="0"' in page
    assert "Nothing is packed in it yet." in page


def test_one_object_is_opened_at_a_time(client: httpx.Client) -> None:
    """Its forms stand there and nowhere else, so that the page stays small."""
    page = show(client, f"/containers/{BOX}?open={SPIKE_KEY}")
    assert page.count('action="/contents/take-out"') == 1
    assert page.count(f'name="key" value="{SPIKE_KEY}"') == 4
    assert 'action="/contents/take-out"' not in show(client, f"/containers/{BOX}")


def test_no_script_and_no_style_stands_in_it(client: httpx.Client) -> None:
    """As its policy wants it."""
    for query in ("", f"?open={SPIKE_KEY}", "?arrange=yes"):
        page = show(client, f"/containers/{BOX}{query}")
        assert " style=" not in page
        assert "hx-on" not in page
        assert "<script>" not in page


@pytest.mark.parametrize("number", ["A/1 & 2", "B-1/history", "Ä?#%2F"])
def test_any_number_has_its_page(client: httpx.Client, number: str) -> None:
    """Slashes and signs of addresses are but signs; what is typed of it is shown as it is."""
    record = {"container_number": number, "title": HOSTILE, "location": [HOSTILE]}
    assert client.post("/api/containers", json={"record": record}).status_code == 201
    page = show(client, f"/containers/{quote(number)}")
    assert "<script>alert" not in page
    assert f"/api/containers/{quote(number)}/preview?" in page
    show(client, f"/history/container/{quote(number)}")
    show(client, f"/edit/container/{quote(number)}")


def test_an_unknown_number_is_told(client: httpx.Client) -> None:
    """With what to do."""
    assert "B-999" in show(client, "/containers/B-999", status=404)


def test_what_is_restricted_is_marked_and_not_pictured(client: httpx.Client) -> None:
    """Staff read its title; nobody sees its photo."""
    tag = client.get(f"/api/objects/{SPIKE}")
    record = tag.json()["record"] | {"restricted": True}
    headers = {"If-Match": tag.headers["etag"]}
    path = f"/api/objects/{SPIKE}"
    assert client.put(path, json={"record": record}, headers=headers).status_code == 200
    place = show(client, f"/containers/{BOX}").split(f'id="p-{SPIKE_KEY}"')[1].split("</li>")[0]
    assert "restricted: ask first" in place
    assert record["title"] in place
    assert "not shown" in place
    assert "/photos/" not in place


def test_a_photo_is_shown_as_cards_show_it(client: httpx.Client) -> None:
    """Turned on its own page it is turned among what lies in the box, too."""
    stream = io.BytesIO()
    Image.effect_noise((900, 600), 80).save(stream, "JPEG")
    files = {"photos": (f"{SPIKE}.jpg", stream.getvalue(), "image/jpeg")}
    assert client.post("/api/photos", files=files).status_code == 200
    wide = _picture(client)
    (photo,) = client.get(f"/api/objects/{SPIKE}/photos").json()["photos"]
    path = f"/api/objects/{SPIKE}/photos/{photo['sha256']}"
    headers = {"If-Match": client.get(path).headers["etag"]}
    assert client.patch(path, json={"turns": 1}, headers=headers).status_code == 200
    high = _picture(client)
    assert wide.width > wide.height
    assert high.width < high.height


def _picture(client: httpx.Client) -> Image.Image:
    page = unescape(show(client, f"/containers/{BOX}"))
    answer = client.get("/api/photos/" + page.split('src="/api/photos/')[1].split('"')[0])
    assert answer.headers["content-type"] == "image/jpeg"
    known = {"If-None-Match": answer.headers["etag"]}
    assert client.get(str(answer.url), headers=known).status_code == 304
    return Image.open(io.BytesIO(answer.content))
