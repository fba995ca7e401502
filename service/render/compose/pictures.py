"""Pictures in a file: each JPEG once, byte for byte as it came."""

from __future__ import annotations

from collections.abc import Callable

from service.errors import PictureError
from service.render.compose.writer import PdfWriter

PictureSource = Callable[[str], bytes]
"""Gives a JPEG by its SHA-256."""

_COLOURS = {1: b"/DeviceGray", 3: b"/DeviceRGB"}
_START = b"\xff\xd8"
_FILL = 0xFF
_FRAMES = frozenset(range(0xC0, 0xD0)) - {0xC4, 0xC8, 0xCC}
"""Markers of a frame header (ISO/IEC 10918-1, table B.1)."""
_BARE = frozenset({0x01, *range(0xD0, 0xD8)})
"""Markers that no segment follows."""


class PictureBook:
    """The pictures of one file."""

    def __init__(self, writer: PdfWriter, source: PictureSource) -> None:
        """Write pictures of `source` as they are asked for."""
        self._writer = writer
        self._source = source
        self._numbers: dict[str, int] = {}

    def number(self, sha256: str) -> int:
        """Give the object of a picture, which is written when it is first asked for.

        Raises:
            PictureError: When it is no JPEG that a PDF shows as it is.
        """
        number = self._numbers.get(sha256)
        if number is None:
            number = self._numbers[sha256] = self._write(sha256)
        return number

    def _write(self, sha256: str) -> int:
        data = self._source(sha256)
        width_px, height_px, components = _frame_of(data, sha256)
        entries = (
            b"/Type/XObject/Subtype/Image/Width %d/Height %d/ColorSpace%b/BitsPerComponent 8"
            b"/Filter/DCTDecode" % (width_px, height_px, _COLOURS[components])
        )
        return self._writer.add_stream(entries, data, known_as=sha256.encode("ascii"))


def _frame_of(data: bytes, sha256: str) -> tuple[int, int, int]:
    """Read width, height and the count of components from the header of a JPEG.

    Raises:
        PictureError: When it is no JPEG of 8 bits, grey or of three colours.
    """
    at = _frame_at(data)
    head = data[at : at + 10]
    if len(head) < 10 or head[4] != 8 or head[9] not in _COLOURS:  # noqa: PLR2004 - ISO/IEC 10918-1.
        name = f"picture {sha256[:12]}"
        raise PictureError(name, reason="it is no JPEG of grey or three colours")
    return int.from_bytes(head[7:9], "big"), int.from_bytes(head[5:7], "big"), head[9]


def _frame_at(data: bytes) -> int:
    """Find the frame header; the end of the data when there is none."""
    at = len(_START) if data.startswith(_START) else len(data)
    while at + 4 <= len(data) and data[at] == _FILL:
        marker = data[at + 1]
        if marker in _FRAMES:
            return at
        if marker == _FILL:
            at += 1
        elif marker in _BARE:
            at += 2
        else:
            at += 2 + int.from_bytes(data[at + 2 : at + 4], "big")
    return len(data)
