from __future__ import annotations

from dataclasses import replace

import pytest

from service.records.sources.columns import (
    CONTAINER_COLUMNS,
    MUSEUM_COLUMNS,
    OBJECT_COLUMNS,
    PACKING_COLUMNS,
    Columns,
)

ALL = [OBJECT_COLUMNS, CONTAINER_COLUMNS, PACKING_COLUMNS, MUSEUM_COLUMNS]


@pytest.mark.parametrize(
    ("heading", "column"),
    [
        ("object_number", "object_number"),
        ("Object Number", "object_number"),
        ("OBJECT-NO.", "object_number"),
        (" accession number ", "object_number"),
        ("Name", "title"),
        ("Object name", "object_name"),
        ("Old number", "former_numbers"),
        ("Shelf list 1998", None),
        ("", None),
    ],
)
def test_heading_is_known_however_written(heading: str, column: str | None) -> None:
    """Case, blanks and signs do not matter, and trade words lead to the column."""
    assert OBJECT_COLUMNS.find(heading) == column


@pytest.mark.parametrize("columns", ALL, ids=["objects", "containers", "packings", "museum"])
def test_every_word_leads_to_a_column_of_its_table(columns: Columns) -> None:
    """Lists of words and kinds name only columns that exist, and no word hides a column."""
    names = set(columns.names)
    assert set(columns.others.values()) <= names
    assert columns.lists | columns.records | columns.counts | columns.yes_or_no <= names
    assert all(columns.find(name) == name for name in names)


@pytest.mark.parametrize(
    ("heading", "column"),
    [
        ("dc:title", "title"),
        ("DC.Identifier", "object_number"),
        ("dcterms:medium", "materials"),
        ("dcterms_extent", "dimensions"),
        ("dc:description", None),
        ("catalogNumber", "object_number"),
        ("dwc:scientificName", "title"),
        ("associatedMedia", "photos"),
        ("type", None),
    ],
)
def test_headings_of_standards_are_known(heading: str, column: str | None) -> None:
    """Terms of Dublin Core and Darwin Core lead to a column, with their prefix or without."""
    assert OBJECT_COLUMNS.find(heading) == column


def test_own_heading_is_surest() -> None:
    """The museum's word for a column comes before the column's name, and that before others."""
    columns = replace(OBJECT_COLUMNS, own={"title": "Bezeichnung", "object_name": "Title"})
    assert columns.find("bezeichnung") == "title"
    assert columns.find("Title") == "object_name"
    headings = ("Bezeichnung", "title", "description")
    assert [columns.closeness(heading, "title") for heading in headings] == [2, 1, 0]


def test_lists_of_darwin_core_are_piped() -> None:
    """Only headings of that standard have lists with bars."""
    assert OBJECT_COLUMNS.is_piped("dwc:otherCatalogNumbers")
    assert not OBJECT_COLUMNS.is_piped("photos")
