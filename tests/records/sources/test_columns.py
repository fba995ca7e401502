from __future__ import annotations

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
