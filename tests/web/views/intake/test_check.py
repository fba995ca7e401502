"""Tests for the page of what will change, and taking it over."""

from __future__ import annotations

import json

import httpx

from tests.web.sent import ONE_BOX
from tests.web.store.opened import BOX, SPIKE
from tests.web.views.intake.sent import PHOTO, UNTIDY, press, send_files
from tests.web.views.opened import show


def changed() -> bytes:
    """Give the sample with one title changed, and one object out of its box."""
    records = json.loads(ONE_BOX.read_text("utf-8"))
    for record in records["objects"]:
        if record["object_number"] == SPIKE:
            record["title"] = "Fid, boxwood"
    places = records["packings"][0]["places"]
    records["packings"][0]["places"] = [one for one in places if one["object_number"] != SPIKE]
    return json.dumps(records).encode()


def test_the_cells_and_boxes_that_differ_are_shown(client: httpx.Client) -> None:
    """The title before and after, and what goes out of the box; nothing is changed."""
    page = show(client, send_files(client, ("export.json", changed())))
    assert "<ins>Fid, boxwood</ins>" in page
    assert '<del class="was">' in page
    assert "goes out" in page
    assert BOX in page
    assert "Marlinspike" in client.get(f"/api/objects/{SPIKE}").text


def test_it_is_taken_over_as_it_was_shown(client: httpx.Client) -> None:
    """The page after it tells what was done; the same again is nothing new."""
    there = send_files(client, ("export.json", changed()))
    done = press(client, there, "/import/take-over")
    assert done == "/import/done?id=1"
    assert "one object changed" in " ".join(show(client, done).split())
    assert "Fid, boxwood" in client.get(f"/api/objects/{SPIKE}").text
    assert "is here already" in show(client, there)


def test_findings_have_their_row_and_column(client: httpx.Client) -> None:
    """What is refused comes first."""
    there = send_files(client, ("untidy_export.csv", UNTIDY))
    page = show(client, press(client, there, "/import/look"))
    assert "untidy_export.csv, row 14, column object_number" in page
    assert "2 refused" in page


def test_photos_are_told_as_they_would_match(client: httpx.Client) -> None:
    """One goes to its object, one fits none."""
    there = send_files(client, (f"{SPIKE}_front.jpg", PHOTO), ("stray.jpg", PHOTO))
    page = show(client, there)
    assert "one matched" in page
    assert "stray.jpg" in page
    assert press(client, there, "/import/take-over").startswith("/import/done")


def test_what_cannot_be_read_is_told(client: httpx.Client) -> None:
    """A document that is none leads back to another file."""
    there = send_files(client, ("export.json", b"{"))
    assert "cannot be read" in show(client, there, status=422)
