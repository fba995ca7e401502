from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from service.errors import UnusableMappingError
from service.records.mapping.check import (
    DELIMITERS,
    ENCODINGS,
    check_mapping,
    refuse_unusable,
    tell_unusable,
)
from service.records.mapping.mapping import ColumnMapping
from service.sentence import Sentence
from tests.records.mapping.made import HEADINGS, MAPPING

WRONG: list[tuple[dict[str, Any], str]] = [
    ({"table": "boxes"}, "“boxes” is none of: objects, containers, packings."),
    (
        {"headings": (*HEADINGS, ("Titel", "title"))},
        "“Benennung”, “Titel” are both to be title; one field takes one.",
    ),
    (
        {"headings": HEADINGS[1:]},
        "No heading is object_number, which every row needs.",
    ),
    (
        {"headings": (*HEADINGS, ("Farbe", "colour"))},
        "“Farbe” is to be “colour”, which is no field.",
    ),
    ({"ignored": ("benennung",)}, "“Benennung” is used and ignored at once."),
    (
        {"headings": (*HEADINGS, ("be-nennung", "period"))},
        "The heading “Benennung” is named 2 times.",
    ),
    (
        {"headings": (*HEADINGS, ("Maße", "dimensions"))},
        "Both dimensions and height, width are named; the one holds the others.",
    ),
    ({"headings": (*HEADINGS, ("--", "period"))}, "“--” cannot be a heading."),
    ({"fixed": {"colour": "red"}}, "“colour” is no field."),
    (
        {"fixed": {"object_number": "1"}},
        "object_number differs from row to row and cannot be fixed.",
    ),
    ({"fixed": {"title": "Lot"}}, "title is filled by a heading and fixed at once."),
    ({"units": {"title": "cm"}}, "“title” is no field that is measured."),
    ({"units": {"height": "kg"}}, "height cannot be in “kg”, only mm, cm, m, in, ft."),
    ({"delimiter": ":"}, "':' is no delimiter; a comma, semicolon, tab or | is."),
    ({"sheet": "x" * 1001}, "The name of the sheet is too long."),
]


@pytest.mark.parametrize(("changed", "said"), WRONG, ids=[said for _, said in WRONG])
def test_what_is_wrong_is_said_in_words(changed: dict[str, Any], said: str) -> None:
    """Each fault gives its one sentence; the same mapping without it gives none."""
    assert check_mapping(MAPPING) == ()
    assert [one.message for one in check_mapping(replace(MAPPING, **changed))] == [said]


def test_an_unknown_encoding_is_refused_and_a_known_one_taken() -> None:
    """What Python knows and no file of records is in counts as unknown."""
    (told,) = check_mapping(replace(MAPPING, encoding="rot13"))
    assert told.code == "unusable-mapping"
    assert "rot13" in told.message
    for encoding in ENCODINGS:
        assert b"".decode(encoding) == ""
        assert check_mapping(replace(MAPPING, encoding=encoding)) == ()
    for delimiter in DELIMITERS:
        assert check_mapping(replace(MAPPING, delimiter=delimiter)) == ()


def test_packings_need_both_numbers() -> None:
    """A packing says what lies where; the object's number may not be missing either."""
    mapping = ColumnMapping("packings", (("Box", "container_number"),))
    assert [one.message for one in check_mapping(mapping)] == [
        "No heading is object_number, which every row needs."
    ]
    assert tell_unusable("headings", Sentence("No.")).where.column == "headings"


def test_an_unusable_mapping_is_refused_with_all_reasons() -> None:
    """Whoever applies it is told everything at once."""
    refuse_unusable("ours", MAPPING)
    with pytest.raises(UnusableMappingError, match=r"'ours' cannot be used\. .*no field") as told:
        refuse_unusable("ours", replace(MAPPING, fixed={"a": "", "b": ""}))
    assert len(told.value.reasons) == 2
