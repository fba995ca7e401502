"""A printed card kept as text and read back, also by a later version of the program.

Canonical JSON (sorted keys, no blanks, characters exactly as they were printed; in the spirit of
RFC 8785), without fractions: cards hold texts and whole numbers only. Texts are not normalised: the
fingerprint counts the characters that were printed, and a file name is what it is. The readers of
records have composed them to NFC already.

Every field is written, with its default too: what was printed stays what it was when a default
changes. A name that no field has any more is left out when read: a program that stops printing
something makes no card wrong. A field that came later takes its default, so it needs one. Whoever
gives a field another name or meaning raises `FORMAT` and converts the older text here.
"""

from __future__ import annotations

import json
from dataclasses import MISSING, asdict, fields, is_dataclass
from functools import cache
from types import NoneType
from typing import TypeVar, cast, get_args, get_origin, get_type_hints

from service.cards.card import (
    Card,
    ContentsList,
    CoverCard,
    EndLabel,
    LidCard,
    ObjectTag,
    ShoulderTag,
    SideCard,
    WarningLabel,
)

FORMAT = 1

T = TypeVar("T")

_CLASSES: dict[object, type[Card]] = {
    "lid-card": LidCard,
    "end-label": EndLabel,
    "cover-card": CoverCard,
    "contents-list": ContentsList,
    "warning-label": WarningLabel,
    "side-card": SideCard,
    "shoulder-tag": ShoulderTag,
    "object-tag": ObjectTag,
}


def card_as_text(card: Card) -> str:
    """Write all that a card says, so that `card_from_text` gives an equal card."""
    kept = {"card": asdict(card), "format": FORMAT}
    return json.dumps(kept, sort_keys=True, separators=(",", ":"), ensure_ascii=False)


def card_from_text(text: str) -> Card:
    """Read a card that was kept as text.

    Raises:
        ValueError: When the text is no card in the form of `card_as_text`.
    """
    try:
        kept = json.loads(text)
    except (ValueError, RecursionError) as error:
        message = "The text of a kept card is not JSON."
        raise ValueError(message) from error
    values = _expect(dict, kept, "text")
    number = values.get("format")
    if type(number) is not int or number != FORMAT:
        message = f"A kept card has format {number!r}; this program reads format {FORMAT}."
        raise ValueError(message)
    said = _expect(dict, values.get("card"), "card")
    kind = _expect(str, said.get("kind"), "kind")
    if kind not in _CLASSES:
        message = f"A kept card is of kind {kind!r}, which this program does not know."
        raise ValueError(message)
    return _read_fields(_CLASSES[kind], said)


def _read_fields(kind: type[T], value: object) -> T:
    """Make one part of a card from its fields.

    Raises:
        ValueError: When a field is lacking that has no default.
    """
    values = _expect(dict, value, kind.__name__)
    hints = _hints(cast("type", kind))
    read = {}
    for name, must_be_there in _names(cast("type", kind)).items():
        where = f"{kind.__name__}.{name}"
        if name in values:
            read[name] = _read(hints[name], values[name], where)
        elif must_be_there:
            message = f"A kept card lacks {where}."
            raise ValueError(message)
    return kind(**read)


def _read(hint: object, value: object, where: str) -> object:
    """Read a value of a type that a card may hold.

    Raises:
        TypeError: When there is no form for the type, so that no field is ever lost.
    """
    inner = get_args(hint)
    if isinstance(hint, type) and hint in {str, int}:
        return _expect(hint, value, where)
    if isinstance(hint, type) and is_dataclass(hint):
        return _read_fields(hint, value)
    if get_origin(hint) is tuple:
        return _read_tuple(inner, _expect(list, value, where), where)
    if len(inner) == 2 and inner[1] is NoneType:  # noqa: PLR2004 - "this type or None"
        return None if value is None else _read(inner[0], value, where)
    message = f"There is no form for {where}, a value of {hint!r}."
    raise TypeError(message)


def _read_tuple(inner: tuple[object, ...], values: list[object], where: str) -> tuple[object, ...]:
    """Read a tuple: of any length where its type ends in an ellipsis.

    Raises:
        ValueError: When it has not as many values as its type.
    """
    hints = inner[:1] * len(values) if inner[-1] is Ellipsis else inner
    if len(hints) != len(values):
        message = f"A kept card has {len(values)} values for {where}."
        raise ValueError(message)
    return tuple(_read(hint, value, where) for hint, value in zip(hints, values, strict=True))


def _expect(kind: type[T], value: object, where: str) -> T:
    """Give back a value that is of exactly this type: true is no whole number.

    Raises:
        ValueError: When it is of another.
    """
    if type(value) is not kind:
        message = f"A kept card has {value!r:.40} for {where}."
        raise ValueError(message)
    return value


@cache
def _hints(kind: type) -> dict[str, object]:
    return get_type_hints(kind)


@cache
def _names(kind: type) -> dict[str, bool]:
    """Name the fields a part is made from, and whether each must be there."""
    return {
        each.name: each.default is MISSING and each.default_factory is MISSING
        for each in fields(kind)
        if each.init
    }
