from __future__ import annotations

import re

import httpx

from tests.web.store.opened import BOX, LAMP, SPIKE
from tests.web.views.contents.packed import SPIKE_KEY, change, fields_of, places_of
from tests.web.views.opened import follow, send


def test_of_two_people_the_second_sees_both_and_does_it_again(client: httpx.Client) -> None:
    """Nothing is lost: mine and theirs side by side, with who and when, then mine on theirs."""
    mine = fields_of(client, key=SPIKE_KEY)
    theirs = {"places": [{"object_number": SPIKE}, {"object_number": LAMP}]}
    answer = client.post(
        f"/api/containers/{BOX}/packings",
        json=theirs,
        headers={"If-Match": '"r1"', "Underlid-Actor": "Ben%20Marl"},
    )
    assert answer.status_code == 201
    page = send(client, "/you", "/contents/take-out", mine, status=409).text
    assert "Somebody else has packed it meanwhile" in page
    assert "<b>Ben Marl</b>" in page
    yours = page.split('id="yours"')[1].split("</section>")[0]
    assert re.search(rf"taken out:\s+<b>{SPIKE}</b>", yours)
    assert places_of(client) == [(SPIKE, 1), (LAMP, 1)]
    form = page.split('id="theirs"')[1].split("<form", 1)[1].split("</form>", 1)[0]
    again = dict(re.findall(r'name="([^"]+)" value="([^"]*)"', form))
    assert again["revision"] == "2"
    page = follow(client, send(client, "/you", "/contents/take-out", again))
    assert f"{SPIKE} is taken out." in page
    assert places_of(client) == [(LAMP, 1)]


def test_the_reason_stands_in_the_history(client: httpx.Client) -> None:
    """As it was typed, blanks put right."""
    change(client, "/contents/take-out", {"reason": " To   display "}, key=SPIKE_KEY)
    packing = client.get(f"/api/containers/{BOX}/packings/2").json()["packing"]
    assert packing["reason"] == "To display"


def test_a_container_that_is_not_there_is_not_found(client: httpx.Client) -> None:
    """There is no page to show the form again on."""
    fields = {"number": "B-999", "revision": "0", "what": SPIKE}
    page = send(client, "/you", "/contents/put-in", fields, status=404).text
    assert "B-999" in page


def test_the_way_back_leads_to_the_card_that_was_shown(client: httpx.Client) -> None:
    """Whoever looked at the end label still does."""
    fields = fields_of(client, key=SPIKE_KEY) | {"card": "end-label", "side": "2"}
    answer = send(client, "/you", "/contents/take-out", fields)
    assert answer.headers["location"] == f"/containers/{BOX}?card=end-label&side=2"
