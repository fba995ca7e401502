from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

import service.records.read_lido
from service.errors import TooManyRecordsError, UnreadableFileError
from service.records.measures import Measure
from service.records.read_lido import read_lido
from service.records.record import PhotoReference, Weight

FOLDER = Path(__file__).parents[2] / "sample_records" / "lido_export"
OPEN = b'<l:lidoWrap xmlns:l="http://www.lido-schema.org">'
RECORD = (
    b"<l:lido><l:descriptiveMetadata><l:objectIdentificationWrap><l:repositoryWrap>"
    b'<l:repositorySet><l:workID l:type="inventory number">%d</l:workID></l:repositorySet>'
    b"</l:repositoryWrap></l:objectIdentificationWrap></l:descriptiveMetadata></l:lido>"
)


def stream(count: int) -> Iterator[bytes]:
    """Give a file of numbered records in pieces."""
    yield OPEN
    for number in range(count):
        yield RECORD % number
    yield b"</l:lidoWrap>"


def test_sample_is_read_with_the_tables_beside() -> None:
    """Objects come from LIDO, containers and packings from the tables."""
    tables = {path.name: path.read_bytes() for path in FOLDER.glob("*.csv")}
    collection = read_lido({"objects.xml": [(FOLDER / "objects.xml").read_bytes()]}, tables)
    block, knives = collection.objects
    assert block.title == "Pulley block from a pilot cutter"
    assert (block.object_name, block.period) == ("pulley block", "about 1885")
    assert block.dimensions[0] == Measure("height", 125.0)
    assert block.weight == Weight(640.0)
    assert block.former_numbers == ("PM 40",)
    assert block.photos == (PhotoReference("1931.14.40.jpg"),)
    assert block.catalogue_url == "https://collections.portmerrow.example/o/1931.14.40"
    assert (knives.number_of_parts, knives.weight) == (3, None)
    assert [container.container_number for container in collection.containers] == ["B-070"]
    assert len(collection.packings[0].places) == 2


def test_several_files_are_one_collection() -> None:
    """Files are read in turn, and a number met in two of them is a finding."""
    collection = read_lido({"a.xml": stream(2), "b.xml": stream(3)})
    assert [record.object_number for record in collection.objects] == ["0", "1", "2"]
    assert [finding.code for finding in collection.findings] == ["duplicate-number"] * 2
    assert {finding.where.file for finding in collection.findings} == {"b.xml"}


def test_objects_without_packings() -> None:
    """A LIDO file alone gives objects and nothing to put them in."""
    collection = read_lido({"a.xml": stream(1)})
    assert (len(collection.objects), collection.containers, collection.packings) == (1, (), ())


def test_broken_file_is_refused_by_name() -> None:
    """A file that breaks off after good records is refused as a whole."""
    with pytest.raises(UnreadableFileError, match=r"a\.xml"):
        read_lido({"a.xml": [OPEN, RECORD % 1]})


def test_too_many_records_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    """LIDO files together have the limit of a table."""
    monkeypatch.setattr(service.records.read_lido, "ROWS_LIMIT", 7)
    assert read_lido({"a.xml": stream(4), "b.xml": stream(3)}).objects
    with pytest.raises(TooManyRecordsError):
        read_lido({"a.xml": stream(4), "b.xml": stream(4)})
