from __future__ import annotations

from collections.abc import Callable

import pytest

from service.records.measures import Measure
from service.records.read_objects import read_objects
from service.records.record import Weight
from service.records.rows.row import Row

MakeRow = Callable[..., Row]


def codes_of(row: Row) -> list[str]:
    """Give the codes of what was noted for a row."""
    return [finding.code for finding in row.notebook.findings()]


def test_row_becomes_a_record(make_row: MakeRow) -> None:
    """What was understood stands beside what was written."""
    row = make_row(
        object_number=" 1954.3.19 ",
        title="Bait jar",
        period="unknown",
        number_of_parts="2",
        materials="stoneware; hemp",
        dimensions="H 12.5\nW 9 cm",
        weight="600 g",
        former_numbers="1954/3; PM 22",
        restricted="no",
    )
    (record,) = read_objects([row])
    assert record.object_number == "1954.3.19"
    assert record.period == ""
    assert record.number_of_parts == 2
    assert record.materials == ("stoneware", "hemp")
    assert record.dimensions == (Measure("height", 125.0), Measure("width", 90.0))
    assert record.dimensions_text == "H 12.5 W 9 cm"
    assert (record.weight, record.weight_text) == (Weight(600.0), "600 g")
    assert record.former_numbers == ("1954/3", "PM 22")
    assert not record.restricted
    assert codes_of(row) == []


@pytest.mark.parametrize("title", ["-", "Untitled", "=SUM(A1)", "none", "12" * 200])
def test_title_is_left_as_it_is(make_row: MakeRow, title: str) -> None:
    """A title is what the catalogue says, whatever it looks like."""
    (record,) = read_objects([make_row(object_number="1", title=title)])
    assert record.title == title


def test_unreadable_restriction_restricts(make_row: MakeRow) -> None:
    """Where nobody can tell, hiding too much is the smaller mistake."""
    row = make_row(object_number="1", restricted="see file")
    (record,) = read_objects([row])
    assert record.restricted
    assert codes_of(row) == ["unreadable-yes-or-no"]


@pytest.mark.parametrize(
    ("address", "kept"),
    [
        ("https://collections.portmerrow.example/o/1", True),
        ("javascript:alert(1)", False),
        ("file:///etc/passwd", False),
        ("http://collections.portmerrow.example/o/1", False),
        ("https://user@collections.portmerrow.example/", False),
        ("https://two words.example/", False),
    ],
)
def test_only_https_addresses_are_kept(make_row: MakeRow, address: str, kept: bool) -> None:  # noqa: FBT001 (a case of a table)
    """An address that no phone should open is noted and left out."""
    row = make_row(object_number="1", catalogue_url=address)
    (record,) = read_objects([row])
    assert record.catalogue_url == (address if kept else "")
    assert codes_of(row) == ([] if kept else ["unusable-address"])


def test_bad_cells_do_not_stop_a_row(make_row: MakeRow) -> None:
    """Every bad cell is noted with the object's number, and the record is still there."""
    row = make_row(
        object_number="1",
        number_of_parts="many",
        dimensions="large",
        weight="light",
        cautions="odd",
    )
    (record,) = read_objects([row])
    assert record.cautions == ("odd",)
    assert len(codes_of(row)) == 4
    assert {finding.where.object_number for finding in row.notebook.findings()} == {"1"}
