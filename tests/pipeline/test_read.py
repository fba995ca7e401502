"""Tests for reading what people hand over."""

from __future__ import annotations

import io
import json
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
