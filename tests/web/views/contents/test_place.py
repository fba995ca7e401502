from __future__ import annotations

import httpx

from service.records.record import PlaceRecord
from service.web.views.contents.place import read_place
from tests.web.store.opened import SPIKE
from tests.web.views.contents.packed import SPIKE_KEY, change, places_of

PLACE = "/contents/place"


def test_a_place_is_read_as_a_spreadsheet_is() -> None:
    """Ranges of parts, compartments in any form; only a layer must be a number."""
    typed = {"layer": "2", "compartment": "b3", "parts": "a-c", "note": " in  tissue "}
    read = read_place("X.1", typed)
    assert read.place == PlaceRecord("X.1", ("a", "b", "c"), 2, "B3", "in  tissue")
    assert read.faults == {}
    assert read_place("X.1", {"compartment": "left corner"}).place.compartment == "left corner"
    assert list(read_place("X.1", {"layer": "0"}).faults) == ["layer"]


def test_an_object_gets_another_place(client: httpx.Client) -> None:
    """The rest stays where it is."""
    before = places_of(client)
    page = change(client, PLACE, {"layer": "2", "note": "in a tray"}, key=SPIKE_KEY)
    assert "has its new place" in page
    assert "in a tray" in page
    assert places_of(client) == [(one, 2 if one == SPIKE else layer) for one, layer in before]


def test_the_same_place_is_no_new_revision(client: httpx.Client) -> None:
    """Said twice it changes nothing."""
    change(client, PLACE, {"layer": "2"}, key=SPIKE_KEY)
    assert "lies there already" in change(client, PLACE, {"layer": "2"}, key=SPIKE_KEY)
    assert len(client.get("/api/containers/B-027/packings").json()["packings"]) == 2


def test_a_layer_that_is_none_is_told(client: httpx.Client) -> None:
    """Beside its field, in the form of that object."""
    page = change(client, PLACE, {"layer": "low"}, key=SPIKE_KEY, status=422)
    assert 'id="fault-layer"' in page
