"""Writes each sign that no shipped font holds as its code, in everything a paper says."""

from __future__ import annotations

from dataclasses import fields, is_dataclass, replace
from enum import Enum
from typing import TypeVar, cast

from service.pages.ruler import Ruler
from service.pages.swap_list.row import spell

T = TypeVar("T")


def spell_paper(ruler: Ruler, paper: T) -> T:
    """Give the same paper with every text in it printable: one sign must not stop a sheet."""
    return cast("T", _spell(ruler, paper))


def _spell(ruler: Ruler, value: object) -> object:
    if isinstance(value, Enum):
        return value
    if isinstance(value, str):
        return spell(ruler, value)
    if isinstance(value, tuple):
        return tuple(_spell(ruler, one) for one in value)
    if is_dataclass(value) and not isinstance(value, type):
        changed = {field.name: _spell(ruler, getattr(value, field.name)) for field in fields(value)}
        return replace(value, **changed)
    return value
