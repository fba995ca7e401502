from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from service.records.lido.export.write import note_left_out, write_lido
from service.records.read_lido import read_lido
from service.records.read_tables import read_tables
from service.records.record import Collection, ContainerRecord, ObjectRecord, PhotoReference
from service.records.record import PhotoRole as Role

DEMO = Path(__file__).parents[4] / "sample_records" / "port_merrow"
RESTRICTED = Collection(objects=(ObjectRecord("1", "Jar"), ObjectRecord("2", restricted=True)))


@pytest.fixture(scope="module")
def demo() -> Collection:
    """Give the demo collection."""
    return read_tables({path.name: path.read_bytes() for path in DEMO.iterdir() if path.is_file()})


def back(collection: Collection) -> Collection:
    """Write a collection and read it again."""
    return read_lido({"x.xml": write_lido(collection)})


def test_demo_comes_back_as_it_was(demo: Collection) -> None:
    """Every object that is not restricted is read back with every value it had."""
    assert back(demo).objects == tuple(item for item in demo.objects if not item.restricted)


def test_restricted_records_stay_in_the_house() -> None:
    """A restricted record is in no file, and the findings say so."""
    assert [record.object_number for record in back(RESTRICTED).objects] == ["1"]
    (finding,) = note_left_out(RESTRICTED)
    assert (finding.code, finding.where.object_number) == ("not-exported", "2")


def test_where_things_are_is_not_written() -> None:
    """No location and no container stands in the file."""
    container = ContainerRecord("B-042", location=("Store 2", "Bay C"))
    data = b"".join(write_lido(replace(RESTRICTED, containers=(container,))))
    assert b"B-042" not in data
    assert b"Store 2" not in data


def test_sides_of_photos_come_back() -> None:
    """A lone photo of the back is no photo of the front afterwards."""
    photos = (PhotoReference("50%20.jpg", Role.BACK), PhotoReference("1.jpg", Role.FRONT))
    (record,) = back(Collection(objects=(ObjectRecord("1", photos=photos),))).objects
    assert record.photos == photos


def test_pieces_are_records() -> None:
    """A file is given record by record, so that it need not be held whole."""
    pieces = list(write_lido(Collection(objects=tuple(ObjectRecord(str(n)) for n in range(5)))))
    assert len(pieces) == 7
    assert max(map(len, pieces)) < 2_000
