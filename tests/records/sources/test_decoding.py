from __future__ import annotations

import codecs

import pytest

from service.errors import UnreadableFileError
from service.records.sources.decoding import decode_text, decode_utf, name_unicode

TEXT = "object_number,title\n1,Café “Éperlan”\n"


@pytest.mark.parametrize(
    "data",
    [
        TEXT.encode(),
        codecs.BOM_UTF8 + TEXT.encode(),
        TEXT.encode("utf-16"),
        codecs.BOM_UTF16_BE + TEXT.encode("utf-16-be"),
        TEXT.encode("utf-16-le"),
        TEXT.encode("utf-16-be"),
        TEXT.encode("utf-32"),
    ],
    ids=["utf-8", "utf-8 mark", "utf-16", "utf-16-be mark", "utf-16-le", "utf-16-be", "utf-32"],
)
def test_unicode_is_read_without_guessing(data: bytes) -> None:
    """Every Unicode encoding is known by its mark or its zeros."""
    assert decode_text(data, name="x.csv") == (TEXT, "")
    assert decode_utf(data, name="x.json") == TEXT


def test_windows_1252_is_read_and_said() -> None:
    """Old exports are read with the right letters, and the guess is told."""
    assert decode_text(TEXT.encode("cp1252"), name="x.csv") == (TEXT, "Windows-1252")


def test_other_encoding_is_guessed() -> None:
    """Bytes that Windows-1252 does not have lead to another guess, which is told."""
    cyrillic = "Судовой компас в латунном корпусе, найден в порту. " * 8
    text, guessed = decode_text(cyrillic.encode("cp1251") + b"\x98\x90\x81", name="x.csv")
    assert guessed != "Windows-1252"
    assert text


@pytest.mark.parametrize(
    "data",
    [b"PK\x03\x04rest", b"\xd0\xcf\x11\xe0rest", b"%PDF-1.7", codecs.BOM_UTF8 + b"\xff"],
    ids=["zip", "old workbook", "pdf", "broken utf-8"],
)
def test_file_that_is_no_text_is_refused(data: bytes) -> None:
    """A file of another kind is named for what it is, not read as noise."""
    with pytest.raises(UnreadableFileError, match=r"^x\.csv cannot be read"):
        decode_text(data, name="x.csv")


def test_document_is_never_guessed() -> None:
    """A format that allows only Unicode refuses everything else."""
    with pytest.raises(UnreadableFileError, match="does not fit UTF-8"):
        decode_utf(TEXT.encode("cp1252"), name="x.json")


def test_empty_file_is_empty_text() -> None:
    """Nothing is a text of no characters."""
    assert decode_text(b"", name="x.csv") == ("", "")


def test_an_encoding_that_is_named_is_used() -> None:
    """It is no guess; only a byte order mark knows better, and bytes that do not fit are told."""
    assert decode_text("Größe".encode("cp850"), name="x", encoding="cp850") == ("Größe", "")
    marked = codecs.BOM_UTF8 + "Größe".encode()
    assert decode_text(marked, name="x", encoding="cp850") == ("Größe", "")
    with pytest.raises(UnreadableFileError, match="does not fit UTF-8"):
        decode_text("Größe".encode("cp850"), name="x", encoding="utf-8")


@pytest.mark.parametrize(
    ("data", "name"),
    [(b"a", "utf-8"), (codecs.BOM_UTF8, "utf-8"), ("ab".encode("utf-16-le"), "utf-16-le")],
)
def test_the_unicode_encoding_is_named(data: bytes, name: str) -> None:
    """As a person would name it."""
    assert name_unicode(data) == name
