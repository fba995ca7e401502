"""Records as canonical JSON and back, driven by the fields of the classes themselves.

Canonical: sorted keys, no blanks, characters as they are (in the spirit of RFC 8785). A field that
holds its default is left out, so that a record saved before a field existed reads and compares as
if the field had always been there. Whoever changes a default has to migrate what is stored.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping, Sequence
from dataclasses import MISSING, Field, dataclass, fields, is_dataclass
from datetime import date
from enum import StrEnum
from functools import cache, partial
from types import NoneType, UnionType
from typing import TypeVar, Union, cast, get_args, get_origin, get_type_hints

from service.errors import UnstorableTextError

T = TypeVar("T")

_Change = Callable[[object], object]
_NO_DEFAULT = object()
_SOURCE = "source"


@dataclass(frozen=True, slots=True)
class _Shape:
    """How the values of one type are written and read."""

    write: _Change
    read: _Change


@dataclass(frozen=True, slots=True)
class _Slot:
    """One field of a class: its name, its default, and how its values are written and read."""

    name: str
    default: object
    shape: _Shape


def encode_record(record: object) -> str:
    """Write a record as canonical JSON, without the source row it came from.

    Raises:
        UnstorableTextError: When a text holds a NUL or half a surrogate pair.
        TypeError: When a field is of a type that has no form here.
    """
    return dump_json(_write_fields(record))


def decode_record(kind: type[T], text: str, *, source: str = "") -> T:
    """Read a record of `kind` from what `encode_record` wrote, with its source row if it has one.

    Raises:
        TypeError: When a field is of a type that has no form here.
    """
    values = _read_values(kind, json.loads(text))
    if source:
        values[_SOURCE] = json.loads(source)
    return kind(**values)


def encode_source(source: Mapping[str, str]) -> str:
    """Write the row a record came from as canonical JSON.

    Raises:
        UnstorableTextError: When a text holds a NUL or half a surrogate pair.
    """
    return dump_json({check_text(name): check_text(value) for name, value in source.items()})


def dump_json(value: object) -> str:
    """Write plain values as canonical JSON.

    Raises:
        UnstorableTextError: When a text holds a NUL or half a surrogate pair.
        ValueError: When a number is not finite.
    """
    text = json.dumps(
        value, sort_keys=True, separators=(",", ":"), ensure_ascii=False, allow_nan=False
    )
    return check_text(text)


def compare_json(before: str, after: str) -> dict[str, dict[str, object]]:
    """Give the fields of two JSON objects that differ: as they were, and as they are."""
    old, new = json.loads(before), json.loads(after)
    names = [name for name in {**old, **new} if old.get(name) != new.get(name)]
    return {
        "before": {name: old[name] for name in names if name in old},
        "after": {name: new[name] for name in names if name in new},
    }


def check_text(text: str) -> str:
    r"""Give a text back, or refuse what PostgreSQL cannot keep and UTF-8 cannot write.

    Raises:
        UnstorableTextError: When it holds a NUL or half a surrogate pair.
    """
    if text.isascii() and "\0" not in text:
        return text
    if "\0" in text or any("\ud800" <= sign <= "\udfff" for sign in text):
        raise UnstorableTextError(text)
    return text


def _write_fields(record: object) -> dict[str, object]:
    written = {}
    for slot in _slots(cast("type", type(record))):
        value = getattr(record, slot.name)
        if value != slot.default:
            written[slot.name] = slot.shape.write(value)
    return written


def _read_values(kind: type, values: Mapping[str, object]) -> dict[str, object]:
    slots = _slots(kind)
    return {slot.name: slot.shape.read(values[slot.name]) for slot in slots if slot.name in values}


@cache
def _slots(kind: type) -> tuple[_Slot, ...]:
    """List the fields a class is made from; the source row is kept apart.

    Raises:
        TypeError: When it has none.
    """
    if not is_dataclass(kind):
        message = f"{kind!r} has no fields to write."
        raise TypeError(message)
    hints = get_type_hints(kind)
    return tuple(
        _Slot(each.name, _default(each), _shape(hints[each.name]))
        for each in fields(kind)
        if each.init and not _is_source_row(each)
    )


def _is_source_row(field: Field[object]) -> bool:
    """Tell the row a record came from, which does not count in comparisons, from other sources."""
    return field.name == _SOURCE and not field.compare


def _default(field: Field[object]) -> object:
    if field.default is not MISSING:
        return field.default
    return field.default_factory() if field.default_factory is not MISSING else _NO_DEFAULT


@cache
def _shape(kind: object) -> _Shape:
    """Find how values of a type are written and read.

    Raises:
        TypeError: When there is no way, so that no field is ever lost.
    """
    if kind in _PLAIN:
        return _PLAIN[kind]
    if get_origin(kind) in {Union, UnionType}:
        return _optional(get_args(kind))
    if get_origin(kind) is tuple:
        return _tuple(get_args(kind))
    if isinstance(kind, type) and issubclass(kind, StrEnum):
        return _Shape(str, kind)
    if isinstance(kind, type) and is_dataclass(kind):
        return _Shape(_write_fields, partial(_make, kind))
    message = f"There is no form for values of {kind!r}."
    raise TypeError(message)


def _make(kind: type, values: object) -> object:
    return kind(**_read_values(kind, cast("Mapping[str, object]", values)))


def _optional(kinds: tuple[object, ...]) -> _Shape:
    """Give the shape of "this type or None".

    Raises:
        TypeError: When the union is any other.
    """
    inner = [kind for kind in kinds if kind is not NoneType]
    if len(inner) != 1 or len(kinds) != len(inner) + 1:
        message = f"There is no form for one of {kinds!r}."
        raise TypeError(message)
    shape = _shape(inner[0])
    return _Shape(
        lambda value: None if value is None else shape.write(value),
        lambda value: None if value is None else shape.read(value),
    )


def _tuple(kinds: tuple[object, ...]) -> _Shape:
    """Give the shape of a tuple: of any length where its type ends in an ellipsis."""
    if kinds[-1] is Ellipsis:
        every = _shape(kinds[0])
        return _Shape(
            lambda values: [every.write(value) for value in _items(values)],
            lambda values: tuple(every.read(value) for value in _items(values)),
        )
    shapes = [_shape(kind) for kind in kinds]
    return _Shape(
        lambda values: [s.write(v) for s, v in zip(shapes, _items(values), strict=True)],
        lambda values: tuple(s.read(v) for s, v in zip(shapes, _items(values), strict=True)),
    )


def _items(values: object) -> Sequence[object]:
    return cast("Sequence[object]", values)


def _same(value: object) -> object:
    return value


_PLAIN: dict[object, _Shape] = {
    str: _Shape(lambda text: check_text(cast("str", text)), _same),
    bool: _Shape(_same, _same),
    int: _Shape(_same, _same),
    # Five and 5.0 are one measure and must be one text.
    float: _Shape(lambda number: float(cast("float", number)), _same),
    date: _Shape(str, lambda text: date.fromisoformat(cast("str", text))),
}
