"""Any value of any record class, made by walking its fields: a new field is tried by itself."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields
from datetime import date
from enum import StrEnum
from types import NoneType, UnionType
from typing import Any, Union, get_args, get_origin, get_type_hints

from hypothesis import strategies as st

texts = st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\0"), max_size=6)
_PLAIN: dict[object, st.SearchStrategy[Any]] = {
    str: texts,
    bool: st.booleans(),
    int: st.integers(-5, 10_000),
    float: st.floats(0, 1e6),
    date: st.dates(),
    Mapping[str, str]: st.dictionaries(texts, texts, max_size=3),
}


def records_of(kind: type, **given: st.SearchStrategy[Any]) -> st.SearchStrategy[Any]:
    """Give records of a class, each field of any value its type allows but where it is `given`."""
    hints = get_type_hints(kind)
    chosen = {
        field.name: given[field.name] if field.name in given else _values_of(hints[field.name])
        for field in fields(kind)
        if field.init
    }
    return st.builds(kind, **chosen)


def _values_of(kind: object) -> st.SearchStrategy[Any]:
    if kind in _PLAIN:
        return _PLAIN[kind]
    inner = get_args(kind)
    if get_origin(kind) in {Union, UnionType}:
        return st.one_of([st.none() if each is NoneType else _values_of(each) for each in inner])
    if get_origin(kind) is tuple:
        if inner[-1] is Ellipsis:
            return st.lists(_values_of(inner[0]), max_size=2).map(tuple)
        return st.tuples(*map(_values_of, inner))
    assert isinstance(kind, type)
    return st.sampled_from(list(kind)) if issubclass(kind, StrEnum) else records_of(kind)
