"""Tests for reading what was sent as it was said how."""

from __future__ import annotations

import pytest

from service.errors import UnreadableFileError
from service.keeping.desk import Desk
from service.keeping.intake.bring_kept import contents_of
from service.keeping.intake.kept_files import KeptFiles
from service.keeping.intake.parts import choose_how, find_parts
from service.keeping.intake.read_as import read_as, refuse_mixed
from service.records.record import Collection, PlaceRecord
from tests.keeping.intake.sent import WITH_BOXES, keep
from tests.records.sources.test_workbook import make_workbook


def read(desk: Desk, kept: KeptFiles) -> Collection:
    """Read it as it seems."""
    return read_as(desk, contents_of(kept), choose_how(find_parts(desk, kept)))


def test_a_list_with_a_column_of_boxes_packs_them(desk: Desk) -> None:
    """A box the store has not is made; what lies in none is no fault, in a workbook alike."""
    rows = [line.split(",") for line in WITH_BOXES.decode().splitlines()]
    for kept in (
        keep(desk, list__csv=WITH_BOXES),
        keep(desk, list__xlsx=make_workbook({"Sheet1": rows})),
    ):
        found = read(desk, kept)
        assert [one.object_number for one in found.objects] == ["T.1", "T.2", "T.3"]
        assert [one.container_number for one in found.containers] == ["N-1"]
        (packing,) = found.packings
        assert packing.places == (PlaceRecord("T.1"), PlaceRecord("T.2", layer=2))
        assert [one.code for one in found.findings] == []


def test_findings_name_files_as_they_came(desk: Desk) -> None:
    """A row without a number is told with the name and row of the file that was sent."""
    found = read(desk, keep(desk, mine__csv=b"object_number,title\nT.1,Lead\n,Line\n"))
    (told,) = [one for one in found.findings if one.code == "row-without-number"]
    assert (told.where.file, told.where.row) == ("mine.csv", 3)


def test_photos_alone_hold_no_records(desk: Desk) -> None:
    """Nothing to read is an empty collection."""
    assert read(desk, keep(desk, a__jpg=b"x")) == Collection()


def test_what_cannot_be_read_together_is_refused(desk: Desk) -> None:
    """A workbook with other tables, and two tables of the same kind."""
    book = make_workbook({"objects": [["object_number"], ["T.1"]]})
    table = b"object_number,title\nT.1,Lead\n"
    for kept in (
        keep(desk, a__xlsx=book, objects__csv=table),
        keep(desk, a__csv=table, b__csv=table + b"\n"),
    ):
        with pytest.raises(UnreadableFileError, match="send"):
            refuse_mixed(kept, choose_how(find_parts(desk, kept)))
    one = keep(desk, a__csv=table)
    refuse_mixed(one, choose_how(find_parts(desk, one)))
