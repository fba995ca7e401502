from __future__ import annotations

import httpx

from tests.web.store.opened import BOX, EMPTY_BOX, LAMP, SPIKE
from tests.web.views.contents.packed import change, places_of, undo

PUT_IN, PUT_NEW_IN = "/contents/put-in", "/contents/put-in-new"
HOSTILE = '"><script>alert(1)</script>'


def _add(client: httpx.Client, number: str, title: str) -> None:
    record = {"object_number": number, "title": title}
    assert client.post("/api/objects", json={"record": record}).status_code == 201


def test_a_number_goes_in_with_its_place(client: httpx.Client) -> None:
    """Layer, compartment and note as typed; the next one goes into the same layer."""
    _add(client, "N/1.2", "Net float")
    typed = {"what": " N/1.2 ", "layer": "2", "compartment": "b03", "note": "in a bag"}
    page = change(client, PUT_IN, typed)
    assert "N/1.2 is in." in page
    assert ("N/1.2", 2) in places_of(client)
    assert ">B3</b>" in page
    assert 'id="put-layer" class="tiny" name="layer" inputmode="numeric" value="2"' in page
    undo(client, page)
    assert ("N/1.2", 2) not in places_of(client)


def test_words_lead_to_a_choice(client: httpx.Client) -> None:
    """Without a script: the records that may be meant, each with a button."""
    _add(client, "N.1", "Net float, cork")
    page = change(client, PUT_IN, {"what": "net float"}, status=422)
    assert 'name="what" value="N.1"' in page
    assert 'action="/contents/put-in-new"' in page
    assert "N.1 is in." in change(client, PUT_IN, {"what": "N.1"})


def test_what_is_in_no_record_is_made_on_the_spot(client: httpx.Client) -> None:
    """Number and title are enough; record and packing are made together."""
    asked = change(client, PUT_IN, {"what": "Z/9", "layer": "3"}, number=EMPTY_BOX, status=422)
    assert "is not in the records yet" in asked
    assert 'name="object_number" type="text" value="Z/9"' in asked
    typed = {"object_number": "Z/9", "title": "Thole pin", "layer": "3"}
    assert "Z/9 is in." in change(client, PUT_NEW_IN, typed, number=EMPTY_BOX)
    assert places_of(client, EMPTY_BOX) == [("Z/9", 3)]
    assert client.get("/api/objects/Z/9").json()["record"]["title"] == "Thole pin"


def test_a_new_object_needs_number_and_title(client: httpx.Client) -> None:
    """Each fault stands beside its field, and nothing is kept; a number that is taken is told."""
    page = change(client, PUT_NEW_IN, {"object_number": "", "title": ""}, status=422)
    assert 'id="fault-object_number"' in page
    assert 'id="fault-title"' in page
    taken = {"object_number": LAMP, "title": "Another"}
    page = change(client, PUT_NEW_IN, taken, number=EMPTY_BOX, status=422)
    assert places_of(client, EMPTY_BOX) == []
    assert "already" in page


def test_what_lies_elsewhere_is_offered_to_be_moved(client: httpx.Client) -> None:
    """The page names the container that has it."""
    page = change(client, PUT_IN, {"what": SPIKE}, number=EMPTY_BOX, status=422)
    assert f"Move it here from {BOX}" in page
    assert f'name="origin" value="{BOX}"' in page
    assert places_of(client, EMPTY_BOX) == []


def test_nothing_goes_in_twice(client: httpx.Client) -> None:
    """What lies in here already is told."""
    assert "lies in here already" in change(client, PUT_IN, {"what": SPIKE}, status=422)


def test_a_layer_that_is_none_is_told_at_its_field(client: httpx.Client) -> None:
    """What was typed stays."""
    _add(client, "N.1", "Net float")
    page = change(client, PUT_IN, {"what": "N.1", "layer": "top"}, status=422)
    assert "“top” is not a whole number" in page
    assert 'value="N.1"' in page


def test_hostile_text_stays_text(client: httpx.Client) -> None:
    """Typed into every field it is shown again as it is, and runs nowhere."""
    page = change(client, PUT_IN, {"what": HOSTILE, "note": HOSTILE}, status=422)
    assert "<script>alert" not in page
    assert "&lt;script&gt;alert(1)" in page
    typed = {"object_number": "H.1", "title": HOSTILE, "note": HOSTILE, "parts": HOSTILE}
    page = change(client, PUT_NEW_IN, typed)
    assert "<script>alert" not in page
