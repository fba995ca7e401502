from __future__ import annotations

import pytest

from service.errors import UnreadableFileError
from service.records.mapping.document import (
    mapping_data,
    read_mapping,
    read_mapping_file,
    write_mapping_file,
)
from tests.records.mapping.made import MAPPING


def test_plain_data_and_toml_come_back_as_they_were() -> None:
    """Quotes, signs and line breaks in headings do not matter."""
    odd = 'a "b" \\ \n\x7f — É'
    mapping = read_mapping({**mapping_data(MAPPING), "ignored": [odd], "sheet": "Blatt 1"})[0]
    assert mapping.ignored == (odd,)
    assert read_mapping(mapping_data(mapping)) == (mapping, ())
    assert read_mapping_file(write_mapping_file(mapping).encode(), name="m.toml") == (mapping, ())


def test_what_is_of_the_wrong_kind_is_said() -> None:
    """Nothing is dropped in silence."""
    document: dict[str, object] = {
        "headings": {"No": "object_number", "x": 3},
        "ignored": "Notiz",
        "decimal_comma": "yes",
        "encoding": 5,
        "colour": "red",
    }
    _, wrong = read_mapping(document)
    assert [one.message for one in wrong] == [
        "headings is a group of texts.",
        "ignored is a list of headings.",
        "decimal_comma is true or false.",
        "encoding is a text, in quotes.",
        "“colour” says nothing in a mapping.",
    ]


def test_a_file_that_is_no_toml_is_refused() -> None:
    """The reason is told."""
    with pytest.raises(UnreadableFileError, match="it is not TOML"):
        read_mapping_file(b"[headings", name="m.toml")
