"""Packed folders, such as the one inside a workbook, looked over before anything unpacks them.

A workbook of a kilobyte can claim a sheet of a million columns, for which a reader asks more
memory than there is. So sizes and cell addresses are read first.
"""

from __future__ import annotations

import io
import re
import zipfile
import zlib
from collections.abc import Iterator
from contextlib import contextmanager

from service.errors import TooManyRecordsError, UnreadableFileError
from service.records.sources.table import COLUMNS_LIMIT, ROWS_LIMIT
from service.sentence import Sentence

ENTRIES_LIMIT = 1_000
UNPACKED_LIMIT_BYTES = 200_000_000
RATIO_LIMIT = 250.0
"""Unpacked to packed; sheets of one repeated row come near 100 (measured 2026)."""

_RATIO_FROM_BYTES = 10_000_000
_SHEET = re.compile(r"xl/worksheets/[^/]+\.xml", re.IGNORECASE)
_WORKBOOK = "xl/workbook.xml"

# Only addresses that could lie outside the limits: three letters, two from GR on, or six digits.
_FAR_ADDRESS = re.compile(
    rb"(?:\br|:|ref)\s*=?\s*[\"']?(?:[A-Z]+[0-9]*:)?"
    rb"(\$?(?:[A-Z]{3,}|G[R-Z]|[H-Z][A-Z])\$?[0-9]+|\$?[A-Z]*\$?[0-9]{6,})[\"']",
    re.IGNORECASE,
)
_ADDRESS_PARTS = re.compile(rb"\$?([A-Z]*)\$?([0-9]+)", re.IGNORECASE)


_DAMAGE = (
    zipfile.BadZipFile,
    zlib.error,
    NotImplementedError,
    OSError,
    EOFError,
    RuntimeError,
    ValueError,
    UnicodeError,
)


@contextmanager
def open_packed(data: bytes, *, name: str, kind: str) -> Iterator[zipfile.ZipFile]:
    """Open a packed folder whose sizes are within the limits; `kind` is what it should be.

    Raises:
        UnreadableFileError: When it is damaged, also while it is read, or would unpack too large.
    """
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as folder:
            _check_sizes(folder.infolist(), name=name)
            yield folder
    except _DAMAGE as error:
        raise UnreadableFileError(
            name, tried=Sentence("it is not {kind}, or damaged", kind=kind)
        ) from error


def check_workbook(data: bytes, *, name: str) -> None:
    """Look over a workbook's packed folder and the addresses of its sheets.

    Raises:
        UnreadableFileError: When it is no workbook, is damaged, or would unpack too large.
        TooManyRecordsError: When a sheet has a cell below the last row that can be read.
    """
    with open_packed(data, name=name, kind="an XLSX workbook") as folder:
        if _WORKBOOK not in folder.namelist():
            raise UnreadableFileError(name, tried="it is not an XLSX workbook")
        for entry in folder.infolist():
            if _SHEET.fullmatch(entry.filename.replace("\\", "/")):
                _check_addresses(folder.read(entry), name=name)


def _check_sizes(entries: list[zipfile.ZipInfo], *, name: str) -> None:
    if len(entries) > ENTRIES_LIMIT:
        raise UnreadableFileError(
            name,
            tried=Sentence(
                "it holds more than {entries_limit} packed files", entries_limit=ENTRIES_LIMIT
            ),
        )
    if sum(entry.file_size for entry in entries) > UNPACKED_LIMIT_BYTES:
        tried = Sentence(
            "it would unpack to more than {unpacked_limit_bytes} MB",
            unpacked_limit_bytes=UNPACKED_LIMIT_BYTES // 1000000,
        )
        raise UnreadableFileError(name, tried=tried)
    for entry in entries:
        packed = max(entry.compress_size, 1)
        if entry.file_size > _RATIO_FROM_BYTES and entry.file_size / packed > RATIO_LIMIT:
            raise UnreadableFileError(
                name, tried=Sentence("{filename!r} is packed too tightly", filename=entry.filename)
            )


def _check_addresses(sheet: bytes, *, name: str) -> None:
    for match in _FAR_ADDRESS.finditer(sheet):
        parts = _ADDRESS_PARTS.fullmatch(match[1])
        letters, digits = parts.groups() if parts else (b"", b"")
        # One more than the limit, for the headings.
        if int(digits or 0) > ROWS_LIMIT + 1:
            raise TooManyRecordsError(name, count=int(digits), limit=ROWS_LIMIT)
        if _column_number(letters) > COLUMNS_LIMIT:
            tried = Sentence(
                "a sheet has more than {columns_limit} columns", columns_limit=COLUMNS_LIMIT
            )
            raise UnreadableFileError(name, tried=tried)


def _column_number(letters: bytes) -> int:
    """Count columns as spreadsheets letter them: A is 1, Z 26, AA 27."""
    number = 0
    for letter in letters.upper():
        number = number * 26 + letter - ord("A") + 1
    return number
