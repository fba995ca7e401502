from __future__ import annotations

import html
import re

import httpx

from tests.web.store.opened import SPIKE
from tests.web.views.opened import HTML, follow, send, show

EDIT = f"/edit/object/{SPIKE}"


def fields_of(page: str) -> dict[str, str | list[str]]:
    """Read the form of a record as a browser would send it."""
    form = page.split('action="/edit/object"', 1)[1].split("</form>", 1)[0]
    sent: dict[str, str | list[str]] = {}
    for tag in re.findall(r"<input[^>]*>", form):
        name, value = re.search(r'name="([^"]+)"', tag), re.search(r'value="([^"]*)"', tag)
        is_off = 'type="checkbox"' in tag and " checked" not in tag
        if name is None or is_off:
            continue
        known = sent.setdefault(name[1], [])
        assert isinstance(known, list)
        known.append(html.unescape(value[1] if value else ""))
    for name_, text in re.findall(r'<textarea[^>]*name="(\w+)"[^>]*>([^<]*)<', form):
        sent[name_] = html.unescape(text)
    for name_, options in re.findall(
        r'<select[^>]*name="(\w+)"[^>]*>(.*?)</select>', form, re.DOTALL
    ):
        chosen = re.search(r'value="([^"]*)" selected', options)
        known = sent.setdefault(name_, [])
        assert isinstance(known, list)
        known.append(chosen[1] if chosen else "")
    return sent


def post(client: httpx.Client, fields: dict[str, str | list[str]]) -> httpx.Response:
    """Send the form."""
    return client.post("/edit/object", data=fields, headers=HTML)


def record(client: httpx.Client) -> dict[str, object]:
    """Read the record."""
    read: dict[str, object] = client.get(f"/api/objects/{SPIKE}").json()["record"]
    return read


def test_kept_as_shown_nothing_changes(client: httpx.Client) -> None:
    """A form that was only looked at leaves no trace."""
    before = record(client)
    answer = post(client, fields_of(show(client, EDIT)))
    assert answer.status_code == 303, answer.text
    assert record(client) == before


def test_fields_and_hazards_are_kept(client: httpx.Client) -> None:
    """A row more is there without script."""
    fields = fields_of(show(client, EDIT)) | {"title": "Marlinspike, boxwood"}
    more = post(client, {**fields, "add": "hazard"})
    assert more.status_code == 200
    assert more.text.count('name="hazard_code"') == len(fields["hazard_code"]) + 1
    codes, states = fields["hazard_code"], fields["hazard_state"]
    fields["hazard_code"] = [*codes[:-1], "mould"]
    fields["hazard_state"] = [*states[:-1], "presumed"]
    page = follow(client, post(client, fields))
    assert f"{SPIKE} is changed." in page
    assert "Mould presumed" in page
    assert record(client)["title"] == "Marlinspike, boxwood"


def test_a_hazard_is_taken_away_only_in_words(client: httpx.Client) -> None:
    """A tick asks for note and day; then history tells of it."""
    add = fields_of(show(client, EDIT))
    add["hazard_code"], add["hazard_state"] = [*add["hazard_code"][:-1], "mould"], "presumed"
    at = len(add["hazard_code"]) - 1
    add["hazard_state"] = ["presumed"] * (at + 1)
    assert post(client, add).status_code == 303
    gone = fields_of(show(client, EDIT)) | {"hazard_gone": str(at)}
    asked = post(client, gone)
    assert asked.status_code == 422
    assert "say in the note what was found" in asked.text
    gone["hazard_note"] = ["cultured: none"] * (at + 2)
    gone["hazard_checked_on"] = ["2026-11-02"] * (at + 2)
    assert post(client, gone).status_code == 303
    kept = record(client)["hazards"]
    assert isinstance(kept, list)
    assert "mould" not in [one["code"] for one in kept]
    events = client.get(f"/api/objects/{SPIKE}/history").json()["events"]
    assert "hazard not found" in [one["verb"] for one in events]


def test_a_conflict_shows_both(client: httpx.Client) -> None:
    """The slower one sees what the other kept, and may keep theirs or yours."""
    mine = fields_of(show(client, EDIT)) | {"title": "Mine"}
    post(client, fields_of(show(client, EDIT)) | {"title": "Theirs"})
    told = post(client, mine)
    assert told.status_code == 422
    assert "Theirs" in told.text
    assert "Mine" in told.text
    again = fields_of(told.text)
    assert again["title"] == ["Mine"]
    assert post(client, again).status_code == 303
    assert record(client)["title"] == "Mine"


def test_a_new_object_needs_a_number_of_its_own(client: httpx.Client) -> None:
    """And nothing else."""
    page = follow(client, send(client, "/new/object", "/new/object", {"object_number": "N.1"}))
    assert "N.1 is kept." in page
    assert "No title yet" in page
    for number in ("", "N.1"):
        send(client, "/new/object", "/new/object", {"object_number": number}, status=422)
    odd = send(
        client, "/new/object", "/new/object", {"object_number": "N.2", "weight": "x"}, status=422
    )
    assert "the weight is unknown" in odd.text
    more = send(client, "/new/object", "/new/object", {"add": "hazard"}, status=200)
    assert "New object" in more.text
