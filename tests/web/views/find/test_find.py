from __future__ import annotations

import httpx

from tests.web.store.opened import BOX, EMPTY_BOX, LAMP, SPIKE
from tests.web.views.opened import HTML, show


def test_the_number_of_a_container_leads_right_to_it(client: httpx.Client) -> None:
    """Blanks around it are no matter."""
    answer = client.get("/find", params={"q": f" {BOX} "}, headers=HTML)
    assert (answer.status_code, answer.headers["location"]) == (303, f"/containers/{BOX}")


def test_which_box_an_object_is_in_is_answered_at_once(client: httpx.Client) -> None:
    """Large, with its place in it and the way there."""
    page = show(client, f"/find?q={SPIKE}")
    answer = page.split("answer-big")[1].split("</section>")[0]
    assert f'<a class="plate" href="/containers/{BOX}"><b>{BOX}</b>' in answer
    assert "layer 1, A2" in answer


def test_an_object_that_lies_nowhere_is_told(client: httpx.Client) -> None:
    """Its number is known, and no container has it."""
    record = {"object_number": "N/1", "title": "Net float"}
    client.post("/api/objects", json={"record": record})
    assert "packed in no container" in show(client, "/find?q=N/1")


def test_one_packed_that_is_in_no_record_is_found(client: httpx.Client) -> None:
    """By its number, for nothing else is known of it."""
    path = f"/api/containers/{EMPTY_BOX}/packings"
    places = {"places": [{"object_number": "UNKNOWN.1"}]}
    assert client.post(path, json=places, headers={"If-Match": '"r0"'}).status_code == 201
    assert f"<b>{EMPTY_BOX}</b>" in show(client, "/find?q=UNKNOWN.1")


def test_words_find_objects_with_their_boxes_and_containers(client: httpx.Client) -> None:
    """Each object with the container it lies in."""
    page = show(client, "/find?q=mercury")
    assert LAMP in page
    assert f"<b>{BOX}</b>" in page
    assert f"<b>{EMPTY_BOX}</b>" in show(client, "/find?q=spare")


def test_nothing_found_is_answered_with_help(client: httpx.Client) -> None:
    """How to look again; what was typed is shown as it is."""
    page = show(client, "/find?q=%22%3E%3Cscript%3Ealert(1)%3C/script%3E")
    assert "Type fewer words" in page
    assert "<script>alert" not in page
    assert 'href="/new/container?number=%22%3E%3Cscript' in page
    assert "Type fewer words" in show(client, "/find")
