"""Tests for the page on which files are sent."""

from __future__ import annotations

import httpx

from tests.web.views.intake.sent import PHOTO, UNTIDY, WITH_BOXES, press, send_files
from tests.web.views.opened import show

TIDY = b"object_number,title\nT.1,Lead\n"


def test_nobody_is_asked_what_the_headings_say(empty: httpx.Client) -> None:
    """Known headings lead to the check at once, unknown ones to the page that asks."""
    assert send_files(empty, ("list.csv", TIDY)).startswith("/import/check?")
    assert send_files(empty, ("untidy_export.csv", UNTIDY)).startswith("/import/look?")
    assert not empty.get("/api/imports").json()["imports"]


def test_from_an_empty_store_to_the_preview_in_three_clicks(empty: httpx.Client) -> None:
    """Begin, choose the file, look: nothing is typed, and the boxes are packed by their column."""
    clicks, typed = ["Import a spreadsheet"], list[str]()
    assert 'href="/import"' in show(empty, "/")
    page = show(empty, "/import")
    clicks.append("choose the file")
    assert page.count('name="files"') == 1
    clicks.append("Look at it")
    there = send_files(empty, ("list.csv", WITH_BOXES))
    preview = show(empty, there)
    assert "Nothing is kept yet" in preview
    assert "Packed for the first time" in preview
    clicks.append("Take over")
    press(empty, there, "/import/take-over")
    assert (len(clicks), typed) == (4, [])
    places = empty.get("/api/objects/T.2/places").json()["places"]
    assert [one["container_number"] for one in places] == ["N-1"]


def test_what_cannot_be_read_is_told_beside_the_field(empty: httpx.Client) -> None:
    """No file at all, and one that is neither a table nor a photo."""
    assert "Choose a file first" in send_files(empty, ("", b""), status=422)
    told = send_files(empty, ("letter.doc", b"x"), status=422)
    assert 'id="fault-files"' in told
    assert "letter.doc" in told
    two = (("a.csv", TIDY), ("b.csv", TIDY + b"T.2,Line\n"))
    assert "send one after the other" in send_files(empty, *two, status=422)


def test_photos_may_come_alone(client: httpx.Client) -> None:
    """They are checked without a question."""
    assert send_files(client, ("1931.14.7_front.jpg", PHOTO)).startswith("/import/check?")
