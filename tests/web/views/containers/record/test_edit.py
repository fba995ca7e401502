from __future__ import annotations

import re

import httpx

from tests.web.store.opened import BOX, EMPTY_BOX
from tests.web.views.opened import follow, send, show

HOSTILE = '"><script>alert(1)</script>'


def _fields(page: str) -> dict[str, str]:
    """Give what a form sends as it is shown."""
    form = page.split("<form", 2)[2]
    typed = dict(re.findall(r'<input[^>]* name="([^"]+)"[^>]* value="([^"]*)"', form))
    chosen = re.findall(r'<select[^>]* name="([^"]+)".*?value="([^"]+)" selected', form, re.DOTALL)
    area = re.findall(r'<textarea[^>]* name="([^"]+)"[^>]*>([^<]*)', form)
    fields = typed | dict(chosen) | dict(area)
    del fields["form_token"]
    return {name: text.replace("&#34;", '"').replace("&#39;", "'") for name, text in fields.items()}


def test_a_new_container_needs_but_a_number(client: httpx.Client) -> None:
    """It is shown at once, to be packed."""
    answer = send(client, "/new/container", "/new/container", {"container_number": "A/7"})
    assert answer.headers["location"] == "/containers/A/7"
    assert "A/7 is kept." in follow(client, answer)


def test_measures_are_typed_as_people_write_them(client: httpx.Client) -> None:
    """In any unit the reader of spreadsheets knows; faults stand beside their fields."""
    typed = {
        "container_number": "A-8",
        "kind": "drawer",
        "lid_size": "30 x 40 cm",
        "gross_weight": "6.2",
        "inside": "B-999",
    }
    page = send(client, "/new/container", "/new/container", typed, status=422).text
    assert 'id="fault-gross_weight"' in page
    assert 'id="fault-inside"' in page
    assert 'id="fault-lid_size"' not in page
    assert 'value="30 x 40 cm"' in page
    right = typed | {"gross_weight": "6.2 kg", "inside": BOX}
    send(client, "/new/container", "/new/container", right)
    record = client.get("/api/containers/A-8").json()["record"]
    assert record["lid_size"] == {"width_mm": 300, "height_mm": 400}
    assert (record["gross"]["weight_g"], record["inside"], record["kind"]) == (6200, BOX, "drawer")


def test_a_number_that_is_taken_is_told(client: httpx.Client) -> None:
    """Nothing is overwritten."""
    fields = {"container_number": BOX, "title": "Other"}
    page = send(client, "/new/container", "/new/container", fields, status=422).text
    assert 'id="fault-container_number"' in page


def test_a_form_sent_as_it_is_shown_changes_nothing(client: httpx.Client) -> None:
    """No field is lost on the way through the form."""
    before = client.get(f"/api/containers/{BOX}").json()
    fields = _fields(show(client, f"/edit/container/{BOX}"))
    send(client, f"/edit/container/{BOX}", "/edit/container", fields)
    assert client.get(f"/api/containers/{BOX}").json() == before


def test_of_two_people_the_second_sees_what_differs(client: httpx.Client) -> None:
    """Theirs stands beside mine; sent again, mine is kept on top of theirs."""
    mine = _fields(show(client, f"/edit/container/{EMPTY_BOX}"))
    theirs = mine | {"title": "Theirs"}
    send(client, f"/edit/container/{EMPTY_BOX}", "/edit/container", theirs)
    mine["title"] = HOSTILE
    page = send(client, "/you", "/edit/container", mine, status=422).text
    assert "<td>Theirs</td>" in page
    assert "<script>alert" not in page
    again = mine | {"tag": _fields(page)["tag"]}
    send(client, "/you", "/edit/container", again)
    record = client.get(f"/api/containers/{EMPTY_BOX}").json()["record"]
    assert record["title"] == HOSTILE


def test_a_container_does_not_lie_in_itself(client: httpx.Client) -> None:
    """Told beside the field."""
    fields = _fields(show(client, f"/edit/container/{BOX}")) | {"inside": BOX}
    page = send(client, "/you", "/edit/container", fields, status=422).text
    assert "cannot lie in itself" in page
