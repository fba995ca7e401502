from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import date

from service.records.read_packings import read_packings
from service.records.record import PackingRecord, PlaceRecord
from service.records.rows.row import Row

MakeRow = Callable[..., Row]


def in_one_notebook(rows: Sequence[Row]) -> list[Row]:
    """Let rows share the first one's notebook."""
    return [replace(row, notebook=rows[0].notebook) for row in rows]


def test_rows_of_a_container_are_one_packing(make_row: MakeRow) -> None:
    """Places keep the order of the rows, containers the order of their first rows."""
    rows = in_one_notebook(
        [
            make_row(container_number="B-2", object_number="9", revision="3", packed_by="R. Vane"),
            make_row(container_number="B-1", object_number="1", parts="a-b"),
            make_row(
                container_number="B-2",
                object_number="10",
                layer="2",
                compartment="b3",
                note="in bag",
                packed_on="",
            ),
        ]
    )
    assert read_packings(rows) == (
        PackingRecord(
            "B-2",
            3,
            (PlaceRecord("9"), PlaceRecord("10", (), 2, "B3", "in bag")),
            packed_by="R. Vane",
        ),
        PackingRecord("B-1", 1, (PlaceRecord("1", ("a", "b")),)),
    )
    assert rows[0].notebook.findings() == ()


def test_rows_that_disagree_are_noted_once(make_row: MakeRow) -> None:
    """The first row says which revision it is; one finding a column points at the first other."""
    rows = in_one_notebook(
        [
            make_row(container_number="B-2", object_number="1", packed_on="2026-10-14"),
            make_row(container_number="B-2", object_number="2", packed_on="2026-10-15"),
            make_row(container_number="B-2", object_number="3", packed_on="2026-10-15"),
        ]
    )
    (packing,) = read_packings(rows)
    assert packing.packed_on == date(2026, 10, 14)
    assert len(packing.places) == 3
    assert [finding.code for finding in rows[0].notebook.findings()] == ["packing-disagrees"]


def test_container_without_objects_is_an_empty_packing(make_row: MakeRow) -> None:
    """A row that names only the container records that it is empty."""
    row = make_row(container_number="B-2", object_number="", packed_by="R. Vane")
    assert read_packings([row]) == (PackingRecord("B-2", packed_by="R. Vane"),)
    assert row.notebook.findings() == ()


def test_place_without_number_is_noted(make_row: MakeRow) -> None:
    """A place needs an object, and a row a container."""
    rows = in_one_notebook(
        [make_row(container_number="B-2", layer="1"), make_row(object_number="1")]
    )
    assert read_packings(rows) == (PackingRecord("B-2"),)
    codes = [finding.code for finding in rows[0].notebook.findings()]
    assert codes == ["row-without-number"] * 2


def test_unreadable_layer_is_the_top_one(make_row: MakeRow) -> None:
    """An object whose layer cannot be read is still in the container."""
    row = make_row(container_number="B-2", object_number="1", layer="bottom")
    (packing,) = read_packings([row])
    assert packing.places == (PlaceRecord("1"),)
    assert [finding.code for finding in row.notebook.findings()] == ["unreadable-place"]
