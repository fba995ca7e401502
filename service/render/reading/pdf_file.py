"""A finished PDF file, object by object, found by its cross-reference stream (ISO 32000-1, 7.5.8).

Written apart from whatever writes our files. It opens only files of one revision, whose streams are
deflated or plain; a file with an older table, an addition or a password is none of ours. Whatever
cannot be read is a `ValueError`.
"""

from __future__ import annotations

import mmap
import re
import zlib
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from service.render.reading.objects import Dictionary, Ref, Value, read_value, refuse, whole_number

_START = re.compile(rb"startxref\s+(\d+)\s+%%EOF\s*\Z")
_HEAD = re.compile(rb"\s*(\d+)\s+0\s+obj\s*")
_LENGTH = re.compile(rb"/Length\s+(\d+)(\s+0\s+R)?")
_BEGIN = re.compile(rb"stream\r?\n")
_PLAIN_END = b"\nendstream"
_END = re.compile(rb"\s*endstream")
_LONGEST_LENGTH = 10
_MOST_HEADS = 1000
_TAIL_BYTES = 64
_IN_FILE = 1
_COLUMNS = 3
_PREDICTOR_UP = 12.0
_ROW_UP = 2


@dataclass(frozen=True, slots=True)
class Stream:
    """A stream: what is said of it but its length, and its bytes as they are stored.

    `frame` is how it is written: between its number and its length, and from there to its bytes.
    """

    head: Dictionary
    stored: memoryview
    frame: tuple[bytes, bytes]

    def holds(self, stored: bytes) -> bool:
        """Tell whether these are the bytes stored, without copying either."""
        return len(stored) == len(self.stored) and stored.startswith(self.stored)

    @property
    def content(self) -> bytes:
        """The bytes it stands for."""
        filters, parms = self.head.get("/Filter"), self.head.get("/DecodeParms")
        if filters is None:
            return bytes(self.stored)
        if filters not in ("/FlateDecode", ["/FlateDecode"]):
            refuse(f"a stream is packed by {filters!r}")
        content = _inflated(self.stored)
        return _unpredicted(content, parms) if isinstance(parms, dict) else content


class PdfFile:
    """An open file; an object is read when it is asked for."""

    def __init__(self, data: bytes | mmap.mmap) -> None:
        """Find the cross-reference stream."""
        self._data = data
        self._view = memoryview(data)
        # Thousands of streams say the same of themselves but for their length.
        self._heads: dict[tuple[bytes, bytes], Dictionary] = {}
        self._packed: dict[int, tuple[bytes, dict[int, int]]] = {}
        start = _START.search(data[-_TAIL_BYTES:])
        _, table = self._stream_at(int(_found(start)[1]))
        self.trailer = table.head
        if not table.head.keys().isdisjoint(("/Prev", "/Encrypt", "/XRefStm")):
            refuse("the file was added to, or needs a password")
        size = whole_number(table.head.get("/Size"))
        if table.head.get("/Index", [0.0, size]) != [0, size]:
            refuse("the table of objects has gaps")
        self._rows = table.content
        self._ends = _column_ends(table.head.get("/W"))

    def value(self, number: int) -> Value:
        """Give an object that is no stream."""
        return read_value(*self._found_at(number))[0]

    def match(self, value: Value, pattern: re.Pattern[bytes]) -> re.Match[bytes] | None:
        """Match what is referred to as it is written; None where it is written otherwise."""
        return pattern.match(*self._found_at(value.number)) if isinstance(value, Ref) else None

    def _found_at(self, number: int) -> tuple[bytes | mmap.mmap, int]:
        """Give where an object that is no stream is written: in what, and from which byte on."""
        kind, place = self._entry(number)
        if kind == _IN_FILE:
            return self._data, self._body(number, place)
        if place not in self._packed:
            self._packed[place] = _unpacked(self.stream(place))
        content, starts = self._packed[place]
        if number not in starts:
            refuse(f"object {number} is missing")
        return content, starts[number]

    def dictionary(self, value: Value) -> Dictionary:
        """Give a dictionary that stands here or is referred to."""
        found = self.value(value.number) if isinstance(value, Ref) else value
        if not isinstance(found, dict):
            refuse(f"a dictionary was expected instead of {found!r:.60}")
        return found

    def array(self, value: Value) -> list[Value]:
        """Give an array that stands here or is referred to."""
        found = self.value(value.number) if isinstance(value, Ref) else value
        if not isinstance(found, list):
            refuse(f"an array was expected instead of {found!r:.60}")
        return found

    def stream(self, value: Value | int) -> Stream:
        """Give the stream that is referred to."""
        number = value.number if isinstance(value, Ref) else whole_number(value)
        kind, place = self._entry(number)
        if kind != _IN_FILE:
            refuse(f"object {number} is no stream")
        found, stream = self._stream_at(place)
        if found != number:
            refuse(f"object {found} stands in the place of {number}")
        return stream

    def repeats(self, number: int, like: Stream, stored: bytes) -> bool:
        """Tell whether a stream holds these bytes and is else written as another is."""
        found = self.stored_like(number, like)
        return found is not None and len(found) == len(stored) and stored.startswith(found)

    def stored_like(self, number: int, like: Stream) -> memoryview | None:
        """Give, faster than by reading it, the bytes of a stream written as another is.

        None where it differs in more than its number and its length.
        """
        _, place = self._entry(number)
        before, after = like.frame
        head = b"%d%b" % (number, before)
        start = place + len(head)
        stop = self._data.find(after, start, start + _LONGEST_LENGTH + len(after))
        digits = self._data[start:stop] if stop >= 0 else b""
        if self._data[place:start] != head or not digits.isdigit():
            return None
        first = stop + len(after)
        end = first + int(digits)
        is_whole = self._data[end : end + len(_PLAIN_END)] == _PLAIN_END
        return self._view[first:end] if is_whole else None

    def pages(self) -> Iterator[Dictionary]:
        """Give the pages in order."""
        root = self.dictionary(self.trailer.get("/Root"))
        yield from self._leaves(self.dictionary(root.get("/Pages")))

    def _leaves(self, node: Dictionary) -> Iterator[Dictionary]:
        if node.get("/Type") == "/Page":
            yield node
            return
        kids = node.get("/Kids")
        if not isinstance(kids, list) or not node.keys() <= {"/Type", "/Kids", "/Count", "/Parent"}:
            refuse("the tree of pages says more than it should")
        for kid in kids:
            yield from self._leaves(self.dictionary(kid))

    def _entry(self, number: int) -> tuple[int, int]:
        """Give the kind of an object, and where it stands: its first byte, or what holds it."""
        first, second, width = self._ends
        start = number * width
        row = self._rows[start : start + second]
        return int.from_bytes(row[:first], "big"), int.from_bytes(row[first:], "big")

    def _body(self, number: int, place: int) -> int:
        """Give where the body of an object begins."""
        head = _found(_HEAD.match(self._data, place))
        if int(head[1]) != number:
            refuse(f"object {int(head[1])} stands in the place of {number}")
        return head.end()

    def _stream_at(self, place: int) -> tuple[int, Stream]:
        """Give the stream that begins at a byte of the file, and its number."""
        data = self._data
        number = _found(_HEAD.match(data, place))
        word = data.find(b"stream", number.end())
        said = data[number.end() : word]
        length, start = _found(_LENGTH.search(said)), _found(_BEGIN.match(data, word)).end()
        known = said[: length.start()], said[length.end() :]
        head = self._heads.get(known)
        if head is None:
            if len(self._heads) >= _MOST_HEADS:
                self._heads.clear()
            head = self._heads[known] = self.dictionary(read_value(b"".join(known))[0])
        count = int(length[1])
        end = start + (whole_number(self.value(count)) if length[2] else count)
        if not _END.match(data, end):
            refuse(f"the stream at byte {place} does not end where it says")
        digits, digits_end = (number.end() + side for side in length.span(1))
        frame = data[number.end(1) : digits], data[digits_end:start]
        return int(number[1]), Stream(head, self._view[start:end], frame)


@contextmanager
def opened_file(path: Path) -> Iterator[PdfFile]:
    """Open a file for reading."""
    with path.open("rb") as file:
        # It is let go with the last stream that was read from it.
        yield PdfFile(mmap.mmap(file.fileno(), 0, access=mmap.ACCESS_READ))


def _found(match: re.Match[bytes] | None) -> re.Match[bytes]:
    if match is None:
        refuse("the file is damaged, or of another kind")
    return match


def _column_ends(widths: Value) -> tuple[int, int, int]:
    if not isinstance(widths, list) or len(widths) != _COLUMNS:
        refuse("the table of objects has no columns")
    first, second, third = map(whole_number, widths)
    return first, first + second, first + second + third


def _unpacked(packed: Stream) -> tuple[bytes, dict[int, int]]:
    """Give the content of a stream of objects, and where in it each of them begins."""
    content, first = packed.content, whole_number(packed.head.get("/First"))
    numbers = [int(number) for number in content[:first].split()]
    starts = (first + start for start in numbers[1::2])
    return content, dict(zip(numbers[::2], starts, strict=True))


def _inflated(stored: memoryview) -> bytes:
    try:
        return zlib.decompress(stored)
    except zlib.error as error:
        refuse(f"a stream is damaged: {error}")


def _unpredicted(content: bytes, parms: Dictionary) -> bytes:
    """Undo the rows that were written as differences from the row above (PNG, filter 2)."""
    columns = whole_number(parms.get("/Columns"))
    if parms.get("/Predictor") != _PREDICTOR_UP:
        refuse(f"a stream is predicted by {parms}")
    above, rows = bytes(columns), []
    for start in range(0, len(content), columns + 1):
        if content[start] != _ROW_UP:
            refuse("a row is predicted otherwise than from the row above")
        row = content[start + 1 : start + 1 + columns]
        above = bytes((one + other) & 0xFF for one, other in zip(row, above, strict=True))
        rows.append(above)
    return b"".join(rows)
