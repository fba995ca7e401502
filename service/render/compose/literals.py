"""Text, names and numbers as a PDF file spells them (ISO 32000-1, 7.3 and 7.9.2.2)."""

from __future__ import annotations

import codecs
import re
from collections.abc import Iterable

_NONE = "\ufffe"
# What the codes of PDFDocEncoding stand for, in their order (ISO 32000-1, annex D.2).
_CODES = codecs.charmap_build(
    _NONE * 9
    + "\t\n"
    + _NONE * 13
    + "˘ˇˆ˙˝˛˚˜"  # noqa: RUF001 - that is the encoding.
    + "".join(map(chr, range(0x20, 0x7F)))
    + _NONE
    + "•†‡…—–ƒ⁄‹›−‰„“”‘’‚™ﬁﬂŁŒŠŸŽıłœšž"  # noqa: RUF001 - that is the encoding.
    + _NONE
    + "€"
    + "".join(_NONE if code == 0xAD else chr(code) for code in range(0xA1, 0x100))  # noqa: PLR2004
)
_UTF_16_MARK = b"\xfe\xff"
_ESCAPED = re.compile(rb"[()\\\r]")


def text_literal(text: str) -> bytes:
    """Write a text: a byte a sign where PDFDocEncoding has them all, UTF-16 where it does not."""
    try:
        data, _ = codecs.charmap_encode(text, "strict", _CODES)
    except UnicodeEncodeError:
        data = _UTF_16_MARK
    # A text may begin with the very signs that announce UTF-16.
    if data.startswith(_UTF_16_MARK):
        data = _UTF_16_MARK + text.encode("utf-16-be")
    return b"(%b)" % _ESCAPED.sub(_escape, data)


def _escape(found: re.Match[bytes]) -> bytes:
    # A bare carriage return would be read as a new line.
    return b"\\r" if found[0] == b"\r" else b"\\" + found[0]


def references(numbers: Iterable[int]) -> bytes:
    """Write an array of references to objects."""
    return b"[%b]" % b" ".join([b"%d 0 R" % number for number in numbers])


def numeral(value: float) -> bytes:
    """Write a number with up to three decimals."""
    return f"{value:.3f}".rstrip("0").rstrip(".").encode("ascii")
