from __future__ import annotations

from dataclasses import fields

import pytest

from service.records.read_containers import read_containers
from service.records.read_json import read_json
from service.records.read_objects import read_objects
from service.records.read_tables import read_tables
from service.records.record import ContainerRecord, ObjectRecord
from service.records.rows.row import Row
from service.records.rows.said import SaidColumns, is_said
from service.records.sources.columns import CONTAINER_COLUMNS, OBJECT_COLUMNS


@pytest.mark.parametrize(
    ("record", "columns"), [(ObjectRecord, OBJECT_COLUMNS), (ContainerRecord, CONTAINER_COLUMNS)]
)
def test_every_field_has_its_column(record: type, columns: object) -> None:
    """A source with every column says every field, and each column is needed for one of them."""
    names = frozenset(columns.names)  # type: ignore[attr-defined]
    compared = [each.name for each in fields(record) if each.compare]
    assert [name for name in compared if not is_said(name, names)] == []
    for name in names - {"questions_role", "questions_phone", "questions_person"}:
        assert [each for each in compared if not is_said(each, names - {name})], name


def test_a_table_says_its_headings() -> None:
    """An empty cell says that there is nothing, but for hazards and restrictions."""
    table = b"number,title,condition,hazards,restricted\nX.1,Buoy,,,\nX.2,Fid,good,none,no\n"
    said = read_tables({"objects.csv": table}).said_of_objects
    assert said["X.1"] == {"object_number", "title", "condition"}
    assert said["X.2"] == said["X.1"] | {"hazards", "restricted"}


def test_a_document_says_the_keys_of_each_record() -> None:
    """Records of one list may say different things."""
    data = b'{"objects": [{"object_number": "X.1", "title": ""}, {"object_number": "X.2"}],'
    data += b'"containers": [{"container_number": "B-1", "questions": {"role": "Desk"}}]}'
    read = read_json(data, name="a.json")
    assert read.said_of_objects["X.1"] == {"object_number", "title"}
    assert read.said_of_objects["X.2"] == {"object_number"}
    assert is_said("questions", read.said_of_containers["B-1"])
    assert not is_said("questions", read.said_of_objects["X.1"])


def test_alike_rows_share_one_set(make_row: object) -> None:
    """A table of a hundred thousand rows holds its columns once; the first of two rows counts."""
    said = SaidColumns()
    rows: list[Row] = [
        make_row(object_number=number, title="Buoy")  # type: ignore[operator]
        for number in ("X.1", "X.2", "X.1")
    ]
    read_objects(rows, said)
    assert list(said.by_number) == ["X.1", "X.2"]
    assert said.by_number["X.1"] is said.by_number["X.2"]
    boxes = SaidColumns()
    read_containers([make_row(container_number="B-1")], boxes)  # type: ignore[operator]
    assert boxes.by_number == {"B-1": {"container_number"}}
