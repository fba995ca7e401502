"""A JSON document to plain values, refused where it could not be stored or answered later."""

from __future__ import annotations

import json
import math
from collections.abc import Iterable
from typing import NoReturn

from service.errors import UnreadableFileError
from service.records.sources.decoding import decode_utf
from service.sentence import Sentence

DEPTH_LIMIT = 12
"""Levels of nesting; a collection needs seven."""


class _Refusal(ValueError):  # noqa: N818 (it never leaves this file)
    """What is wrong with a document, in words."""


def read_document(data: bytes, *, name: str) -> dict[str, object]:
    """Read the one object a JSON file holds.

    Raises:
        UnreadableFileError: When the file is not JSON (RFC 8259), holds a number that is not
            finite, half a surrogate pair, a key twice in one object, or is nested too deep.
    """
    text = decode_utf(data, name=name).removeprefix("\ufeff")
    try:
        document = json.loads(text, parse_constant=_refuse_constant, object_pairs_hook=_make_object)
        _check_tree(document)
    except RecursionError as error:
        raise UnreadableFileError(name, tried="it is nested too deep") from error
    except ValueError as error:
        raise UnreadableFileError(
            name, tried=Sentence("it is not usable JSON ({error})", error=error)
        ) from error
    if not isinstance(document, dict):
        raise UnreadableFileError(name, tried="it does not hold one JSON object")
    return document


def _refuse_constant(word: str) -> NoReturn:
    message = f"{word} is not a number"
    raise _Refusal(message)


def _make_object(pairs: list[tuple[str, object]]) -> dict[str, object]:
    made = dict(pairs)
    if len(made) != len(pairs):
        keys = [key for key, _ in pairs]
        twice = next(key for key in made if keys.count(key) > 1)
        message = f"the key {ascii(twice)[:80]} stands twice in one object"
        raise _Refusal(message)
    return made


def _check_tree(document: object) -> None:
    """Walk the values level by level, so that depth costs no stack.

    Raises:
        _Refusal: When a value cannot be used, or lies too deep.
    """
    level: list[object] = [document]
    for _ in range(DEPTH_LIMIT):
        level = [inner for value in level for inner in _inner(value)]
        if not level:
            return
    message = f"it is nested more than {DEPTH_LIMIT} levels deep"
    raise _Refusal(message)


def _inner(value: object) -> Iterable[object]:
    if isinstance(value, dict):
        return [*value.keys(), *value.values()]
    if isinstance(value, list):
        return value
    if isinstance(value, float) and not math.isfinite(value):
        message = "a number is too large"
        raise _Refusal(message)
    if isinstance(value, str) and any("\ud800" <= sign <= "\udfff" for sign in value):
        message = "it holds half a surrogate pair"
        raise _Refusal(message)
    return ()
