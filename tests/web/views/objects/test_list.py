from __future__ import annotations

import httpx

from service.records.record import PhotoRole
from service.store.shelf.shown import ShownPhoto
from service.web.views.objects.list import choose_shown
from tests.web.store.opened import BOX, SPIKE
from tests.web.views.opened import show


def test_objects_are_listed_and_found(client: httpx.Client) -> None:
    """With the container in which each lies, and what is out of it."""
    page = show(client, "/objects")
    assert SPIKE in page
    assert BOX in page
    client.post("/api/outs", json={"object_number": SPIKE, "container_number": BOX})
    assert "out since 25 Nov 2026" in show(client, f"/objects?q={SPIKE}")
    assert "No object has these words." in show(client, "/objects?q=unheard")


def test_there_may_be_none(empty: httpx.Client) -> None:
    """An empty store says so."""
    assert "There is none yet." in show(empty, "/objects")


def test_a_long_list_has_pages(empty: httpx.Client) -> None:
    """Each leads to the next, and back to the beginning."""
    for at in range(41):
        empty.post("/api/objects", json={"record": {"object_number": f"N.{at}"}})
    first = show(empty, "/objects")
    assert "N.40" not in first
    further = first.split('href="/objects?after=')[1].split('"')[0]
    second = show(empty, f"/objects?after={further}")
    assert "N.40" in second
    assert "From the beginning" in second
    assert "There are more: add a word." in show(empty, "/objects?q=N")


def test_the_front_stands_for_an_object() -> None:
    """The first that is not removed; without a front any other."""
    back = ShownPhoto("b", "b" * 64, ".jpg", PhotoRole.BACK)
    gone = ShownPhoto("g", "c" * 64, ".jpg", PhotoRole.FRONT, is_removed=True)
    front = ShownPhoto("f", "a" * 64, ".jpg", PhotoRole.FRONT)
    assert choose_shown([gone, back, front]) == front
    assert choose_shown([gone, back]) == back
    assert choose_shown([gone]) is None
