"""What was done to a record, field by field, in the words of its form."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from service.keeping.containers.history import Deed
from service.records.record import ContainerRecord
from service.store.canonical import decode_record, dump_json
from service.web.views.containers.record.values import write_values


@dataclass(frozen=True, slots=True)
class ChangedField:
    """One field as it was and as it is since, empty where it says nothing."""

    name: str
    before: str
    after: str


@dataclass(frozen=True, slots=True)
class ShownDeed:
    """One thing that was done, and the fields that it changed."""

    deed: Deed
    fields: tuple[ChangedField, ...]


def show_deed(deed: Deed) -> ShownDeed:
    """Show what was done."""
    changed = deed.detail.get("record")
    return ShownDeed(deed, _compare(changed) if isinstance(changed, dict) else ())


def _compare(changed: Mapping[str, Mapping[str, object]]) -> tuple[ChangedField, ...]:
    was, now = (_write(changed.get(name, {})) for name in ("before", "after"))
    return tuple(ChangedField(name, was[name], now[name]) for name in was if was[name] != now[name])


def _write(said: Mapping[str, object]) -> dict[str, str]:
    """Write the fields that are said; what the others hold does not matter here."""
    text = dump_json({"container_number": "", **said})
    return write_values(decode_record(ContainerRecord, text))
