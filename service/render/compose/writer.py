"""Writes a PDF file from its first byte to its last, and keeps none of it (ISO 32000-1, 7.5).

Streams go out as they come. Small objects are gathered into object streams (7.5.7), which deflate
well, and the table of where everything stands is a stream too (7.5.8). What is remembered of an
object is eight bytes.
"""

from __future__ import annotations

import hashlib
import sys
import zlib
from array import array
from typing import BinaryIO

_HEADER = b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n"
_DEFLATE_LEVEL = 6
_MOST_TOGETHER = 200
"""Objects in one object stream: enough to deflate well, few enough to be read at once."""

# A row of the table is one number: kind in 1 byte, place in 5, index or generation in 2.
_KIND_SHIFT = 56
_PLACE_SHIFT = 16
_FREE = 0xFFFF
_PLAIN = 1 << _KIND_SHIFT
_TOGETHER = 2 << _KIND_SHIFT


class PdfWriter:
    """One file being written to `target`, which need not be able to seek."""

    def __init__(self, target: BinaryIO) -> None:
        """Begin the file."""
        self._write = target.write
        self._position = 0
        self._rows = array("Q", [_FREE])
        self._waiting: list[tuple[int, bytes]] = []
        self._identity = hashlib.sha256()
        self._put(_HEADER)

    def reserve(self) -> int:
        """Give a number to an object that is written later."""
        self._rows.append(_FREE)
        return len(self._rows) - 1

    def add(self, body: bytes, *, number: int = 0) -> int:
        """Write any object but a stream, and give its number: a new one unless it is given."""
        number = number or self.reserve()
        self._waiting.append((number, body))
        if len(self._waiting) >= _MOST_TOGETHER:
            self._write_waiting()
        return number

    def add_stream(
        self, entries: bytes, data: bytes, *, number: int = 0, known_as: bytes = b""
    ) -> int:
        """Write a stream as it is, and give its number: a new one unless it is given.

        `entries` is its dictionary without brackets and length. `known_as` stands for `data` where
        the file is given its identifier, so that long data need not be hashed again.
        """
        number = number or self.reserve()
        self._rows[number] = _PLAIN | self._position << _PLACE_SHIFT
        head = b"%d 0 obj\n<<%b/Length %d>>stream\n" % (number, entries, len(data))
        self._identity.update(head)
        self._identity.update(known_as or data)
        self._put(head)
        self._put(data)
        self._put(b"\nendstream\nendobj\n")
        return number

    def add_deflated(self, entries: bytes, data: bytes, *, number: int = 0) -> int:
        """Write a stream that is deflated here; the rest as `add_stream`."""
        packed = zlib.compress(data, _DEFLATE_LEVEL)
        return self.add_stream(entries + b"/Filter/FlateDecode", packed, number=number)

    def close(self, *, catalog: int, info: int) -> None:
        """Write what is still waiting, the table, and where it stands."""
        self._write_waiting()
        number, start = self.reserve(), self._position
        self._rows[number] = _PLAIN | start << _PLACE_SHIFT
        table = array("Q", self._rows)
        if sys.byteorder == "little":
            # Numbers of the file stand with the high byte first.
            table.byteswap()
        name = self._identity.hexdigest()[:32].encode("ascii")
        entries = (
            b"/Type/XRef/Size %d/W[1 5 2]/Root %d 0 R/Info %d 0 R/ID[<%b><%b>]/Filter/FlateDecode"
            % (len(table), catalog, info, name, name)
        )
        self.add_stream(entries, zlib.compress(table.tobytes(), _DEFLATE_LEVEL), number=number)
        self._put(b"startxref\n%d\n%%%%EOF\n" % start)

    def _write_waiting(self) -> None:
        """Write an object stream: pairs of number and place, then the objects."""
        if not self._waiting:
            return
        waiting, self._waiting = self._waiting, []
        holder = self.reserve()
        pairs: list[bytes] = []
        place = 0
        for index, (number, body) in enumerate(waiting):
            pairs.append(b"%d %d" % (number, place))
            place += len(body) + 1
            self._rows[number] = _TOGETHER | holder << _PLACE_SHIFT | index
        head = b" ".join(pairs) + b"\n"
        entries = b"/Type/ObjStm/N %d/First %d" % (len(waiting), len(head))
        bodies = b"\n".join(body for _, body in waiting)
        self.add_deflated(entries, head + bodies, number=holder)

    def _put(self, data: bytes) -> None:
        self._write(data)
        self._position += len(data)
