"""Tests for reading what people hand over."""

from __future__ import annotations

import io
import json
import shutil
from pathlib import Path

import pytest
import xlsxwriter

from service.errors import MissingSourceError, UnreadableFileError
from service.pipeline.read import open_source, parse_files, read_source
from service.pipeline.ready import Workshop

OBJECTS = "object_number,title\n1987.1,Sounding lead\n"


def _workbook() -> bytes:
    stream = io.BytesIO()
    with xlsxwriter.Workbook(stream, {"in_memory": True}) as book:
        sheet = book.add_worksheet("objects")
        sheet.write_row(0, 0, ["object_number", "title"])
        sheet.write_row(1, 0, ["1987.1", "Sounding lead"])
    return stream.getvalue()


@pytest.mark.parametrize(
    ("name", "data"),
    [
        ("objects.csv", OBJECTS.encode()),
        ("all.json", json.dumps({"objects": [{"object_number": "1987.1"}]}).encode()),
        ("book.xlsx", _workbook()),
    ],
    ids=["csv", "json", "xlsx"],
)
def test_every_form_reads(tmp_path: Path, name: str, data: bytes, workshop: Workshop) -> None:
    """CSV, JSON and workbook give the same object, alone and from a folder."""
    (tmp_path / name).write_bytes(data)
    opened = open_source(tmp_path / name)
    records = read_source(opened.files, workshop.workers).objects
    assert [record.object_number for record in records] == ["1987.1"]


def test_folder_lists_its_photos(tmp_path: Path) -> None:
    """Photos are listed by name and not read."""
    (tmp_path / "objects.csv").write_text(OBJECTS)
    (tmp_path / "photos").mkdir()
    (tmp_path / "photos" / "a.jpg").write_bytes(b"x")
    opened = open_source(tmp_path)
    assert set(opened.files) == {"objects.csv"}
    assert opened.photos == {"a.jpg": tmp_path / "photos" / "a.jpg"}


def test_folder_with_a_workbook(tmp_path: Path) -> None:
    """A folder may hold a workbook instead of CSV files."""
    (tmp_path / "book.xlsx").write_bytes(_workbook())
    assert parse_files(dict(open_source(tmp_path).files)).objects[0].title == "Sounding lead"


def test_nothing_there_is_told(tmp_path: Path) -> None:
    """An empty folder and a missing file are told with their name."""
    with pytest.raises(MissingSourceError):
        open_source(tmp_path)
    with pytest.raises(MissingSourceError):
        open_source(tmp_path / "missing.csv")


def test_unreadable_file_crosses_the_process(workshop: Workshop) -> None:
    """An error of the reader arrives from its child process as what it was."""
    with pytest.raises(UnreadableFileError):
        read_source({"all.json": b"{nonsense"}, workshop.workers)


LIDO = (
    b'<lido xmlns="http://www.lido-schema.org"><descriptiveMetadata><objectIdentificationWrap>'
    b'<repositoryWrap><repositorySet><workID type="inventory number">1987.1</workID>'
    b"</repositorySet></repositoryWrap></objectIdentificationWrap></descriptiveMetadata></lido>"
)


def test_lido_is_read_as_a_stream(tmp_path: Path, workshop: Workshop) -> None:
    """A LIDO file is named, not loaded; those of a folder come in natural order, tables beside."""
    for name in ("export10.xml", "export9.XML", "._export9.xml"):
        (tmp_path / name).write_bytes(LIDO)
    (tmp_path / "packings.csv").write_text("container_number,object_number\nB-1,1987.1\n")
    opened = open_source(tmp_path)
    assert list(opened.files) == ["export9.XML", "export10.xml", "packings.csv"]
    assert opened.files["export9.XML"] == tmp_path / "export9.XML"
    collection = read_source(opened.files, workshop.workers)
    assert [record.object_number for record in collection.objects] == ["1987.1"]
    assert len(collection.packings) == 1


def test_single_lido_file(tmp_path: Path) -> None:
    """A LIDO file by itself gives its objects, as bytes or from where it lies."""
    (tmp_path / "one.xml").write_bytes(LIDO)
    from_disk = parse_files(dict(open_source(tmp_path / "one.xml").files))
    assert from_disk == parse_files({"one.xml": LIDO})
    assert len(from_disk.objects) == 1


@pytest.mark.parametrize("name", ["objects.csv", "book.xlsx"])
def test_tables_win_over_lido(tmp_path: Path, name: str) -> None:
    """A folder that holds a table of objects is read from the table."""
    (tmp_path / "export.xml").write_bytes(LIDO)
    (tmp_path / name).write_bytes(OBJECTS.encode() if name.endswith("csv") else _workbook())
    assert list(open_source(tmp_path).files) == [name]


ARCHIVE = Path(__file__).parents[2] / "sample_records" / "darwin_archive"


def test_archive_of_records_is_read(tmp_path: Path) -> None:
    """An archive is read by itself or in a folder; a packed folder of photos is none."""
    alone = parse_files(dict(open_source(ARCHIVE / "skins.zip").files))
    whole = parse_files(dict(open_source(ARCHIVE).files))
    assert (len(alone.objects), len(alone.packings)) == (2, 0)
    assert (len(whole.objects), len(whole.packings)) == (2, 1)
    (tmp_path / "photos.zip").write_bytes(b"PK\x05\x06" + bytes(18))
    (tmp_path / "torn.zip").write_bytes(b"PK")
    with pytest.raises(MissingSourceError):
        open_source(tmp_path)
    shutil.copy(ARCHIVE / "skins.zip", tmp_path / "z.zip")
    assert list(open_source(tmp_path).files) == ["z.zip"]


def test_readme_of_the_samples_lists_each() -> None:
    """Each sample stands in the table that says what it proves, and nothing else does."""
    text = (ARCHIVE.parent / "README.md").read_text(encoding="utf-8").split("## ")[0]
    listed = {line.split("`")[1].rstrip("/") for line in text.splitlines() if line[:3] == "| `"}
    assert listed == {found.name for found in ARCHIVE.parent.iterdir()} - {"README.md"}
