"""Bytes to text: byte order marks, UTF-8, UTF-16, then the encodings of old exports."""

from __future__ import annotations

import codecs

from charset_normalizer import from_bytes

from service.errors import UnreadableFileError
from service.sentence import Sentence

_MARKS = (
    (codecs.BOM_UTF8, "utf-8-sig"),
    (codecs.BOM_UTF32_LE, "utf-32"),
    (codecs.BOM_UTF32_BE, "utf-32"),
    (codecs.BOM_UTF16_LE, "utf-16"),
    (codecs.BOM_UTF16_BE, "utf-16"),
)
_FOREIGN = (
    (b"PK\x03\x04", "it is a workbook or a packed folder, not a text file"),
    (b"\xd0\xcf\x11\xe0", "it is a workbook of the old binary kind, not a text file"),
    (b"%PDF", "it is a PDF, not a text file"),
)
_SAMPLE_BYTES = 200_000
_NUL_SHARE = 0.3


def decode_text(data: bytes, *, name: str, encoding: str = "") -> tuple[str, str]:
    """Decode a file; also give the encoding where it had to be guessed, else an empty string.

    A file with a byte order mark is in the encoding of the mark, whatever `encoding` says.

    Raises:
        UnreadableFileError: When the file is not text, or in no encoding that fits every byte.
    """
    for start, reason in _FOREIGN:
        if data.startswith(start):
            raise UnreadableFileError(name, tried=reason)
    encoding = _marked(data) or encoding or _unmarked_utf16(data)
    if encoding:
        return _decode_strictly(data, encoding=encoding, name=name), ""
    for encoding, guessed in (("utf-8", ""), ("cp1252", "Windows-1252")):
        try:
            return data.decode(encoding), guessed
        except UnicodeDecodeError:
            continue
    return _guess(data, name=name)


def name_unicode(data: bytes) -> str:
    """Name the Unicode encoding of a file that is in one: "utf-8", "utf-16", ..."""
    return (_marked(data) or _unmarked_utf16(data) or "utf-8").removesuffix("-sig")


def decode_utf(data: bytes, *, name: str) -> str:
    """Decode a file whose format allows only Unicode.

    Raises:
        UnreadableFileError: When it is in none of the Unicode encodings.
    """
    encoding = _marked(data) or _unmarked_utf16(data) or "utf-8"
    return _decode_strictly(data, encoding=encoding, name=name)


def _marked(data: bytes) -> str:
    return next((encoding for mark, encoding in _MARKS if data.startswith(mark)), "")


def _unmarked_utf16(data: bytes) -> str:
    """Tell UTF-16 without a mark by the NUL that stands beside every Latin letter."""
    sample = data[: _SAMPLE_BYTES - _SAMPLE_BYTES % 2]
    half = len(sample) / 2
    if not half or len(data) % 2:
        return ""
    if sample[1::2].count(0) > half * (1 - _NUL_SHARE) and sample[::2].count(0) < half * _NUL_SHARE:
        return "utf-16-le"
    if sample[::2].count(0) > half * (1 - _NUL_SHARE) and sample[1::2].count(0) < half * _NUL_SHARE:
        return "utf-16-be"
    return ""


def _decode_strictly(data: bytes, *, encoding: str, name: str) -> str:
    try:
        return data.decode(encoding)
    except UnicodeDecodeError as error:
        tried = Sentence(
            "byte {start} does not fit {upper}", start=error.start, upper=encoding.upper()
        )
        raise UnreadableFileError(name, tried=tried) from error


def _guess(data: bytes, *, name: str) -> tuple[str, str]:
    best = from_bytes(data[:_SAMPLE_BYTES]).best()
    if best is None or best.encoding == "ascii":
        tried = Sentence(
            "it was tried as UTF-8, UTF-16 and Windows-1252, and no other encoding fits"
        )
        raise UnreadableFileError(name, tried=tried)
    return _decode_strictly(data, encoding=best.encoding, name=name), best.encoding
