from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from service.records.cells.parts import expand_marks, read_marks, read_parts
from service.records.record import Part
from service.records.rows.cell import Cell

MakeCell = Callable[[str], Cell]


@pytest.mark.parametrize(
    ("text", "marks"),
    [
        ("a-c", ("a", "b", "c")),
        ("a\u2013b", ("a", "b")),
        ("1-3", ("1", "2", "3")),
        ("c-a", ("c-a",)),
        ("A-b", ("A-b",)),
        ("x-ray", ("x-ray",)),
        ("hat", ("hat",)),
    ],
)
def test_range_of_marks_is_spelt_out(text: str, marks: tuple[str, ...]) -> None:
    """Only a rising range of letters or numbers is one; everything else stays as written."""
    assert expand_marks(text) == marks


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("a: lid; b: base", (Part("a", "lid"), Part("b", "base"))),
        ("a-b", (Part("a"), Part("b"))),
        ("a-b: button", (Part("a", "button"), Part("b", "button"))),
        ("case; five pins", (Part("", "case"), Part("", "five pins"))),
        ("12", (Part("12"),)),
        ("", ()),
        ("none", ()),
    ],
)
def test_parts_have_mark_or_name(make_cell: MakeCell, text: str, parts: tuple[Part, ...]) -> None:
    """Marks, ranges and plain names are told apart."""
    assert read_parts(make_cell(text)) == parts


def test_parts_of_a_document_are_taken_as_given(make_cell: MakeCell) -> None:
    """A mark that a document states is not looked into."""
    cell = replace(make_cell(""), listed=({"mark": "a-b", "name": "pair"}, "c"))
    assert read_parts(cell) == (Part("a-b", "pair"), Part("c"))


@pytest.mark.parametrize(
    ("text", "marks"),
    [("a-b", ("a", "b")), ("hat", ("hat",)), ("a, c; d", ("a", "c", "d")), ("", ())],
)
def test_marks_of_a_place(make_cell: MakeCell, text: str, marks: tuple[str, ...]) -> None:
    """A place names parts by mark, range or name; empty means the whole object."""
    assert read_marks(make_cell(text)) == marks
