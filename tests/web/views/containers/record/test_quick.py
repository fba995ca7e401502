from __future__ import annotations

import re

import httpx

from tests.web.store.opened import EMPTY_BOX
from tests.web.views.contents.packed import undo
from tests.web.views.opened import follow, send, show

PAGE = f"/containers/{EMPTY_BOX}"


def _tag(page: str) -> str:
    found = re.search(r'name="tag" value="([^"]+)"', page)
    assert found is not None
    return found[1].replace("&#34;", '"')


def _record(client: httpx.Client) -> dict[str, object]:
    record: dict[str, object] = client.get(f"/api{PAGE}").json()["record"]
    return record


def test_a_place_is_kept_and_undone(client: httpx.Client) -> None:
    """From the store to the shelf; the way back stands on the next page."""
    fields = {"number": EMPTY_BOX, "tag": _tag(show(client, PAGE)), "location": "Store 1 / Bay 2"}
    page = follow(client, send(client, PAGE, "/edit/location", fields))
    assert "Its place is now: Store 1 / Bay 2." in page
    assert _record(client)["location"] == ["Store 1", "Bay 2"]
    undo(client, page)
    assert _record(client)["location"] == []


def test_a_weight_needs_its_unit(client: httpx.Client) -> None:
    """A fault beside the field; with its unit it is kept."""
    fields = {"number": EMPTY_BOX, "tag": _tag(show(client, PAGE)), "gross_weight": "6.2"}
    page = send(client, PAGE, "/edit/weight", fields, status=422).text
    assert 'id="fault-gross_weight"' in page
    assert 'value="6.2"' in page
    send(client, PAGE, "/edit/weight", fields | {"gross_weight": "6.2 kg"})
    assert _record(client)["gross"] == {"weight_g": 6200.0, "basis": "measured"}


def test_the_second_of_two_people_is_told_what_it_is_now(client: httpx.Client) -> None:
    """And sends it again, if it is still to be so."""
    tag = _tag(show(client, PAGE))
    first = {"number": EMPTY_BOX, "tag": tag, "location": "Store 1"}
    send(client, PAGE, "/edit/location", first)
    page = send(client, "/you", "/edit/location", first | {"location": "Store 2"}, status=422).text
    assert "It says now: Store 1." in page
    send(client, "/you", "/edit/location", first | {"location": "Store 2", "tag": _tag(page)})
    assert _record(client)["location"] == ["Store 2"]
