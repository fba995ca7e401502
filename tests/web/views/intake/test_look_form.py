"""Tests for the form that says what headings mean."""

from __future__ import annotations

from service.keeping.intake.parts import Part
from service.records.mapping.mapping import ColumnMapping
from service.records.mapping.sample import read_sample
from service.web.views.intake.look_form import read_look, show_parts
from service.web.views.shell.forms import FilledForm

SAMPLE = read_sample(b"No;Name;Kiste\n1;Lot;K-1\n", name="a.csv", like=ColumnMapping())
PART = Part("a.csv", SAMPLE, {}, {})


def test_the_guess_is_chosen_until_something_else_is_said() -> None:
    """What nobody knows comes first, and its unit can be said at once."""
    (shown,) = show_parts((PART,), FilledForm())
    assert [(row.heading, row.chosen) for row in shown.rows] == [
        ("Kiste", ""),
        ("No", "object_number"),
        ("Name", "title"),
    ]
    assert "cm" in shown.rows[0].measures
    assert "box:container_number" in shown.options
    assert "box:container_number" not in shown.part_fields
    (shown,) = show_parts((PART,), FilledForm({"t0h1": "period"}))
    assert shown.rows[2].chosen == "period"


def test_a_column_of_boxes_makes_a_mapping_of_packings() -> None:
    """Both name every heading, used or ignored."""
    said = {"t0h0": "object_number", "t0h1": "title", "t0h2": "box:container_number"}
    how, faults = read_look((PART,), said)
    assert (faults, how.boxes_made) == ({}, True)
    assert dict(how.mappings["packings"].headings) == {
        "Kiste": "container_number",
        "No": "object_number",
    }
    assert how.mappings["objects"].ignored == ("Kiste",)


def test_faults_name_their_fields() -> None:
    """A field filled twice is told beside the second heading."""
    how, faults = read_look((PART,), {"t0h0": "object_number", "t0h1": "object_number"})
    assert "are both to be object_number" in " ".join(faults.values())
    assert not how.boxes_made
    assert list(read_look((PART,), {})[1]) == ["t0"]
