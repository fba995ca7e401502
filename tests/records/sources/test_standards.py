from __future__ import annotations

import pytest

from service.records.sources.columns import OBJECT_COLUMNS
from service.records.sources.standards import (
    name_file,
    name_standard,
    read_piped,
    standard_headings,
)


def test_headings_lead_to_columns_that_exist() -> None:
    """Each term of the two standards stands for a column of the object table."""
    assert set(standard_headings().values()) <= set(OBJECT_COLUMNS.names)


@pytest.mark.parametrize(
    ("text", "column", "expected"),
    [
        ("skin | skull | skeleton", "materials", "skin; skull; skeleton"),
        ("one", "former_numbers", "one"),
        ("https://x/a/1.jpg | https://x/2.jpg?s=1", "photos", "1.jpg; 2.jpg"),
        ("https://x/view/17", "photos", "https://x/view/17"),
        ("", "photos", ""),
    ],
    ids=["list", "one", "media", "no file", "empty"],
)
def test_piped_lists_are_written_as_ours(text: str, column: str, expected: str) -> None:
    """A list with bars becomes one with semicolons, media become names of files."""
    assert read_piped(text, column=column) == expected


@pytest.mark.parametrize(
    ("address", "name"),
    [
        ("1931.14.40.jpg", "1931.14.40.jpg"),
        ("https://x/a/1.JPG", "1.JPG"),
        ("https://x/a/1.jpg?size=5#top", "1.jpg"),
        ("https://x/a%20b/1931%2F14.jpg", "14.jpg"),
        ("https://x/J%C3%BCg.png", "Jüg.png"),
        (r"C:\photos\1.tif", "1.tif"),
        ("1931#14.jpg", "1931#14.jpg"),
        ("../../1.jpg", "1.jpg"),
        ("..%2f..%2f1.jpg", "1.jpg"),
        ("/etc/passwd", ""),
        ("https://x/iiif/17/full/max/0/default.jpg", ""),
        ("https://x/view?file=1.jpg", ""),
        ("https://x/.jpg", ""),
        ("https://x/", ""),
        ("", ""),
    ],
)
def test_only_the_name_of_a_picture_is_taken(address: str, name: str) -> None:
    """Neither path, server nor query of an address is kept, and no name that all objects share."""
    assert name_file(address) == name


@pytest.mark.parametrize(
    ("heading", "standard"),
    [
        ("dc:title", "Dublin Core"),
        ("DCTERMS.extent", "Dublin Core"),
        ("dwc:catalogNumber", "Darwin Core"),
        ("catalogNumber", "Darwin Core"),
        ("title", ""),
        ("decor", ""),
        ("dctitle", ""),
        ("", ""),
    ],
)
def test_standard_is_named_only_where_it_shows(heading: str, standard: str) -> None:
    """Words that could stand in any table are claimed for no standard."""
    assert name_standard(heading) == standard
