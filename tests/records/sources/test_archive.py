from __future__ import annotations

import io
import zipfile

import pytest

from service.errors import RecordsError, TooManyRecordsError, UnreadableFileError
from service.records.sources.archive import UNPACKED_LIMIT_BYTES, check_workbook, open_packed


def pack(sheet: bytes = b"<sheetData/>", **others: bytes) -> bytes:
    """Pack a folder that looks like a workbook."""
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as folder:
        folder.writestr("xl/workbook.xml", b"<workbook/>")
        folder.writestr("xl/worksheets/sheet1.xml", sheet)
        for name, data in others.items():
            folder.writestr(name, data)
    return target.getvalue()


@pytest.mark.parametrize(
    "sheet",
    [
        b'<dimension ref="A1:GR200001"/>',
        b'<row r="200001"><c r="GR200001"/></row>',
        b'<c r="A1"><v>XFD1048576</v></c>',
    ],
    ids=["dimension", "last cell", "address as text"],
)
def test_sheet_inside_the_limits_passes(sheet: bytes) -> None:
    """The last row and column that can be read are not refused, nor are words in cells."""
    check_workbook(pack(sheet), name="x.xlsx")


@pytest.mark.parametrize(
    ("sheet", "error"),
    [
        (b'<dimension ref="A1:A1048576"/>', TooManyRecordsError),
        (b'<c r="A1"/><c r="XFD1048576"/>', TooManyRecordsError),
        (b"<row r='200002'>", TooManyRecordsError),
        (b'<c r="GS1"/>', UnreadableFileError),
        (b'<c r = "xfd1"/>', UnreadableFileError),
        (b'<dimension ref="A1:ZZ9"/>', UnreadableFileError),
    ],
    ids=["dimension", "far cell", "far row", "column 201", "small letters", "wide"],
)
def test_far_cell_is_refused_before_it_is_read(sheet: bytes, error: type[RecordsError]) -> None:
    """A small file that claims a huge sheet is refused by its addresses."""
    with pytest.raises(error):
        check_workbook(pack(sheet), name="x.xlsx")


def test_file_that_would_unpack_too_large_is_refused() -> None:
    """Sizes are summed before anything is unpacked."""
    with pytest.raises(UnreadableFileError, match="packed too tightly"):
        check_workbook(pack(b" " * 20_000_000), name="x.xlsx")
    halves = dict.fromkeys(("a", "b"), b" " * (UNPACKED_LIMIT_BYTES // 2 + 1))
    with pytest.raises(UnreadableFileError, match="unpack to more than"):
        check_workbook(pack(**halves), name="x.xlsx")


def test_too_many_packed_files_are_refused() -> None:
    """A workbook has some dozens of parts, not thousands."""
    with pytest.raises(UnreadableFileError, match="packed files"):
        check_workbook(pack(**{str(number): b"" for number in range(1001)}), name="x.xlsx")


@pytest.mark.parametrize("at", [0, 10, 60, -30], ids=str)
def test_damaged_file_is_refused(at: int) -> None:
    """A file cut or changed anywhere ends in one error of ours."""
    data = bytearray(pack(b"<c/>" * 100))
    data[at] ^= 0xFF
    try:
        check_workbook(bytes(data), name="x.xlsx")
    except RecordsError as error:
        assert "x.xlsx" in str(error)  # noqa: PT017 (a change that harms nothing may pass)
    with pytest.raises(UnreadableFileError):
        check_workbook(bytes(data[:-20]), name="x.xlsx")


def test_other_packed_folder_is_no_workbook() -> None:
    """A ZIP of photos is told apart from a workbook."""
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w") as folder:
        folder.writestr("a.jpg", b"")
    with pytest.raises(UnreadableFileError, match="not an XLSX workbook"):
        check_workbook(target.getvalue(), name="photos.zip")


def test_damage_met_while_reading_is_an_error_of_ours() -> None:
    """A packed file whose check sum is wrong is found when it is read."""
    stored = io.BytesIO()
    with zipfile.ZipFile(stored, "w") as folder:
        folder.writestr("a.txt", b"hello")
    damaged = stored.getvalue().replace(b"hello", b"hallo")
    with (
        pytest.raises(UnreadableFileError, match="not a box, or damaged"),
        open_packed(damaged, name="x.zip", kind="a box") as opened,
    ):
        opened.read("a.txt")
    with open_packed(stored.getvalue(), name="x.zip", kind="a box") as opened:
        assert opened.read("a.txt") == b"hello"
