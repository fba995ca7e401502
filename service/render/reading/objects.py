"""Values as a PDF file writes them (ISO 32000-1, 7.3).

A small reader of our own, for proofs that look at thousands of objects: it knows what finished
files hold and takes anything else for damage, a `ValueError`.
"""

from __future__ import annotations

import mmap
import re
from collections.abc import Callable, Sequence
from typing import NamedTuple, NoReturn


class Ref(NamedTuple):
    """The number of an object that stands elsewhere in the file."""

    number: int


Value = dict[str, "Value"] | list["Value"] | Ref | str | bytes | float | bool | None
"""Names are texts with their solidus, strings are bytes as they are written, between brackets."""

Dictionary = dict[str, Value]

_SPACE = rb"[\0\t\n\f\r ]*(?:%[^\r\n]*[\0\t\n\f\r ]*)*"
_KINDS = {
    "ref": rb"(\d+)\s+0\s+R(?![^\0\t\n\f\r ()<>\[\]{}/%])",
    "number": rb"([+-]?(?:\d+\.?\d*|\.\d+))",
    "name": rb"(/[^\0\t\n\f\r ()<>\[\]{}/%]*)",
    "open": rb"(<<|\[)",
    "close": rb"(>>|\])",
    # Brackets inside a string may stand in pairs, one within another up to here.
    "string": rb"\(((?:[^()\\]|\\.|\((?:[^()\\]|\\.)*\))*)\)",
    "digits": rb"(<[0-9A-Fa-f\s]*>)",
    "word": rb"(true|false|null)",
}
_TOKEN = re.compile(_SPACE + rb"(?:" + rb"|".join(_KINDS.values()) + rb")", re.DOTALL)
_NAMES = ("", *_KINDS)
# What names many objects and says nothing else, as lists of resources do.
_ENTRY = rb"(/\w+)\s+(\d+)\s+0\s+R\s*"
_DIRECTORY = re.compile(rb"\s*<<\s*((?:" + _ENTRY.replace(b"(", b"(?:") + rb")+)>>")
_ENTRIES = re.compile(_ENTRY)
_WORDS: dict[bytes, bool | None] = {b"true": True, b"false": False, b"null": None}


def refuse(reason: str) -> NoReturn:
    """Say that a file cannot be read.

    Raises:
        ValueError: Always.
    """
    raise ValueError(reason)


def whole_number(value: Value) -> int:
    """Give a value that must be a whole number."""
    if not isinstance(value, int | float) or value != int(value):
        refuse(f"a whole number was expected instead of {value!r:.60}")
    return int(value)


def read_value(data: bytes | mmap.mmap, start: int = 0) -> tuple[Value, int]:
    """Read the value that begins at `start`, and say where it ends."""
    # What stands open, innermost last; the outermost list takes the value itself.
    open_lists: list[list[Value]] = [[]]
    at = start
    while True:
        token = _TOKEN.match(data, at)
        if token is None or token.lastindex is None:
            refuse(f"no value stands at byte {at}")
        kind, text = _NAMES[token.lastindex], token[token.lastindex]
        directory = _DIRECTORY.match(data, at) if text == b"<<" else None
        at = (directory or token).end()
        if directory:
            open_lists[-1].append(_listed(directory[1]))
        elif kind == "open":
            open_lists.append([])
        elif kind == "close" and len(open_lists) > 1:
            parts = open_lists.pop()
            open_lists[-1].append(_paired(parts) if text == b">>" else parts)
        elif kind == "close":
            refuse(f"a bracket is closed at byte {at} that was not opened")
        else:
            open_lists[-1].append(_MAKERS[kind](text))
        if len(open_lists) == 1:
            return open_lists[0][0], at


def _ref(text: bytes) -> Value:
    return Ref(int(text))


def _name(text: bytes) -> Value:
    return text.decode("latin-1")


_MAKERS: dict[str, Callable[[bytes], Value]] = {
    "ref": _ref,
    "number": float,
    "name": _name,
    "string": bytes,
    "digits": bytes,
    "word": _WORDS.__getitem__,
}


def _listed(entries: bytes) -> Dictionary:
    """Make a dictionary of references."""
    return _unique(
        [(name.decode(), Ref(int(number))) for name, number in _ENTRIES.findall(entries)]
    )


def _paired(parts: list[Value]) -> Dictionary:
    """Make a dictionary of names and values that follow each other."""
    names = [name for name in parts[::2] if isinstance(name, str)]
    if len(parts) != 2 * len(names):
        refuse("a dictionary does not pair names with values")
    return _unique(list(zip(names, parts[1::2], strict=True)))


def _unique(pairs: Sequence[tuple[str, Value]]) -> Dictionary:
    found = dict(pairs)
    if len(found) != len(pairs):
        refuse("a dictionary gives a name twice")
    return found
