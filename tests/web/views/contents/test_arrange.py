from __future__ import annotations

import httpx
import pytest

from service.records.record import PlaceRecord
from service.web.views.containers.contents import place_key
from tests.web.store.opened import EMPTY_BOX
from tests.web.views.contents.packed import change, places_of

A, B = place_key(PlaceRecord("A.1")), place_key(PlaceRecord("B.1"))


@pytest.fixture(autouse=True)
def packed(client: httpx.Client) -> None:
    """Pack two things into the empty box."""
    places = [{"object_number": "A.1"}, {"object_number": "B.1"}]
    path = f"/api/containers/{EMPTY_BOX}/packings"
    answer = client.post(path, json={"places": places}, headers={"If-Match": '"r0"'})
    assert answer.status_code == 201


def test_a_step_keeps_the_keyboard_on_its_button(client: httpx.Client) -> None:
    """Without a script the page comes back with the focus where it was."""
    page = change(client, "/contents/step", {"step": f"down:{A}"}, number=EMPTY_BOX)
    assert places_of(client, EMPTY_BOX) == [("B.1", 1), ("A.1", 1)]
    button = page.split(f'id="down-{A}"')[1].split(">")[0]
    assert "autofocus" in button


def test_a_step_into_another_layer(client: httpx.Client) -> None:
    """And one that leads nowhere says so."""
    change(client, "/contents/step", {"step": f"layer-down:{B}"}, number=EMPTY_BOX)
    assert places_of(client, EMPTY_BOX) == [("A.1", 1), ("B.1", 2)]
    page = change(client, "/contents/step", {"step": f"layer-up:{A}"}, number=EMPTY_BOX)
    assert "cannot go further" in page


def test_a_whole_order_comes_of_dragging(client: httpx.Client) -> None:
    """As the script writes it."""
    page = change(client, "/contents/order", {"order": f"1:{B} 2:{A}"}, number=EMPTY_BOX)
    assert "The new order is kept." in page
    assert places_of(client, EMPTY_BOX) == [("B.1", 1), ("A.1", 2)]


@pytest.mark.parametrize("order", ["1:nothing", f"x:{A}", f"-1:{A}", f"999999:{A}"])
def test_an_order_of_something_else_is_refused(client: httpx.Client, order: str) -> None:
    """Nothing is changed."""
    change(client, "/contents/order", {"order": order}, number=EMPTY_BOX, status=422)
    assert places_of(client, EMPTY_BOX) == [("A.1", 1), ("B.1", 1)]


def test_a_step_that_is_none_is_refused(client: httpx.Client) -> None:
    """Only the four buttons send one."""
    change(client, "/contents/step", {"step": "sideways"}, number=EMPTY_BOX, status=422)
