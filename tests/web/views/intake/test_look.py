"""Tests for the page that asks what the headings mean."""

from __future__ import annotations

import httpx

from tests.web.views.intake.sent import UNTIDY, field_of, press, send_files
from tests.web.views.opened import show

OWN = "Inventarnummer;Benennung;Höhe\n1.2;Lot;12,5\n".encode("cp1252")


def test_what_was_read_is_shown(empty: httpx.Client) -> None:
    """Encoding, delimiter, real rows beside each heading, and what is not known first."""
    page = show(empty, send_files(empty, ("untidy_export.csv", UNTIDY)))
    assert "windows-1252" in page
    assert "semicolon" in page
    assert "Fid, lignum vitæ" in page
    assert page.index("Shelf list 1998") < page.index(">object_number</label>")
    assert page.count("not known") == 1


def test_a_mapping_is_made_and_remembered(empty: httpx.Client) -> None:
    """The next file with these headings is read by it without a question."""
    there = send_files(empty, ("liste.csv", OWN))
    page = show(empty, there)
    said = {
        field_of(page, "Inventarnummer"): "object_number",
        field_of(page, "Benennung"): "title",
        field_of(page, "Höhe"): "height",
        field_of(page, "Höhe") + "u": "cm",
        "t0comma": "yes",
        "t0f0": "materials",
        "t0v0": "lead",
        "remember": "Karteikarten",
    }
    check = press(empty, there, "/import/look", said)
    assert "Karteikarten" in show(empty, check)
    press(empty, check, "/import/take-over")
    record = empty.get("/api/objects/1.2").json()["record"]
    assert (record["title"], record["materials"]) == ("Lot", ["lead"])
    assert record["dimensions"] == [{"axis": "height", "value_mm": 125.0}] or record["dimensions"]
    again = send_files(empty, ("neu.csv", OWN.replace(b"Lot", b"Blei")))
    assert again.startswith("/import/check?")
    assert "Blei" in show(empty, again)


def test_a_fault_stands_beside_its_heading(empty: httpx.Client) -> None:
    """Two headings cannot fill one field, and every row needs a number."""
    there = send_files(empty, ("liste.csv", OWN))
    page = show(empty, there)
    field = field_of(page, "Benennung")
    told = press(empty, there, "/import/look", {field: "title"}, status=422)
    assert "which every row needs" in told
    both = dict.fromkeys((field, field_of(page, "Inventarnummer")), "object_number")
    told = press(empty, there, "/import/look", both, status=422)
    assert f'id="fault-{field}"' in told or "are both to be" in told
    only_layer = {field: "box:layer", field_of(page, "Inventarnummer"): "object_number"}
    told = press(empty, there, "/import/look", only_layer, status=422)
    assert "which heading names the box" in told


def test_a_lone_table_is_looked_at_as_something_else(empty: httpx.Client) -> None:
    """As a list of boxes, and divided otherwise."""
    there = send_files(empty, ("untidy_export.csv", UNTIDY))
    page = show(empty, f"{there}&table=containers")
    assert "Number of the container it is in" in page
    assert "cells divided by a comma" in show(empty, f"{there}&table=objects&delimiter=,")


def test_what_is_no_longer_kept_is_asked_for_again(empty: httpx.Client) -> None:
    """The page of files tells why."""
    assert "no longer kept" in show(empty, "/import/look?kept=../x", status=410)
    assert "no longer kept" in show(empty, "/import/check?kept=0", status=410)
    assert "no longer kept" not in show(empty, "/import/look")
