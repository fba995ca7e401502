from __future__ import annotations

import pytest

from service.records.rows.notebook import Notebook
from service.records.rows.row import Row
from service.records.sources.columns import CONTAINER_COLUMNS, OBJECT_COLUMNS, Columns
from service.records.sources.entries import make_row


def read(
    entry: dict[str, object], columns: Columns = OBJECT_COLUMNS
) -> tuple[Row, list[tuple[str, str]]]:
    """Make a row of an entry; give it with code and place of what was noted."""
    notebook = Notebook()
    row = make_row(entry, columns, name="x.json", pointer="objects/3", notebook=notebook)
    return row, [(finding.code, finding.where.column) for finding in notebook.findings()]


def test_values_come_as_a_table_would_have_them() -> None:
    """Text, counts, yes and no, lists and groups each come to their column."""
    row, noted = read(
        {
            "title": "Jar",
            "number_of_parts": 2,
            "restricted": True,
            "period": None,
            "materials": ["clay; glazed", "oak"],
            "hazards": [{"code": "lead", "state": "presumed"}, "arsenic: unchecked"],
        }
    )
    assert row.text("title") == "Jar"
    assert row.text("number_of_parts") == "2"
    assert row.text("restricted") == "yes"
    assert row.text("period") == ""
    assert row.list_cell("materials").items() == ("clay; glazed", "oak")
    assert row.list_cell("hazards").items()[0] == {"code": "lead", "state": "presumed"}
    assert noted == []


@pytest.mark.parametrize(
    ("entry", "code", "place"),
    [
        ({"weight": 1.2}, "wrong-type", "objects/3/weight"),
        ({"title": ["Jar"]}, "wrong-type", "objects/3/title"),
        ({"title": True}, "wrong-type", "objects/3/title"),
        ({"restricted": 1}, "wrong-type", "objects/3/restricted"),
        ({"materials": [{"name": "oak"}]}, "wrong-type", "objects/3/materials/0"),
        ({"hazards": ["lead", 7]}, "wrong-type", "objects/3/hazards/1"),
        ({"hazards": [{"code": 7}]}, "wrong-type", "objects/3/hazards/0/code"),
        ({"colour": "red"}, "unknown-column", "objects/3/colour"),
    ],
    ids=str,
)
def test_wrong_value_is_left_out_with_its_place(
    entry: dict[str, object], code: str, place: str
) -> None:
    """A value that cannot be used is named by its place in the document."""
    row, noted = read(entry)
    assert noted == [(code, place)]
    assert all(not row.text(column) for column in entry)


def test_numbers_that_came_as_numbers_are_marked() -> None:
    """An object number without quotes may have lost a zero."""
    row, _ = read({"object_number": 1931.10})
    assert row.text("object_number") == "1931.1"
    assert row.retyped == {"object_number"}


def test_questions_stand_beside_the_other_fields() -> None:
    """A group of questions is read as the columns of a table are."""
    row, noted = read({"questions": {"role": "Desk", "fax": "1"}}, CONTAINER_COLUMNS)
    assert row.text("questions_role") == "Desk"
    assert noted == [("unknown-column", "objects/3/questions/fax")]


def test_source_keeps_what_came() -> None:
    """Whatever was in the entry can be shown again."""
    row, _ = read({"title": "Jar", "materials": ["oak"], "colour": {"hue": "red"}})
    assert row.source == {"title": "Jar", "materials": '["oak"]', "colour": '{"hue": "red"}'}
