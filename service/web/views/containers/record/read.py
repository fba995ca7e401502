"""Reads what was typed of a container with the readers of spreadsheets; faults by field."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields, replace

from service.languages.saying import say
from service.records.read_containers import read_containers
from service.records.record import ContainerRecord
from service.records.sources.columns import CONTAINER_COLUMNS
from service.store.handles import Connection
from service.store.packing.load import load_held
from service.web.views.containers.record.values import write_values
from service.web.views.shell.typed import make_typed_row, tell_faults

_NUMBER = "container_number"
_COLUMNS = {
    "inner_dimensions": "inner_size",
    "tare": "tare_weight",
    "gross": "gross_weight",
    "hand_height_mm": "hand_height",
    "weight_limit_g": "weight_limit",
}
"""The columns of fields that are called otherwise; whom to ask has three."""


@dataclass(frozen=True, slots=True)
class TypedContainer:
    """A record as it was typed, and what of it could not be understood."""

    record: ContainerRecord
    faults: Mapping[str, str]


def read_container(
    values: Mapping[str, str], *, was: ContainerRecord | None = None
) -> TypedContainer:
    """Read a container; what was not typed anew stays just as it was, whatever its text lost."""
    row, notebook = make_typed_row(values, CONTAINER_COLUMNS)
    found = read_containers([row])
    faults = tell_faults(notebook)
    if not found:
        return TypedContainer(ContainerRecord(""), {**faults, _NUMBER: say("It needs a number.")})
    record = found[0] if was is None else _keep_untouched(found[0], was, values)
    source = {} if was is None else was.source
    return TypedContainer(replace(record, source=source), faults)


def find_odd_nesting(connection: Connection, record: ContainerRecord) -> dict[str, str]:
    """Tell of a container that is said to lie in one that is not there, or in itself."""
    if record.inside == record.container_number and record.inside:
        return {"inside": say("A container cannot lie in itself.")}
    if record.inside and record.inside not in load_held(connection, [record.inside]):
        return {
            "inside": say("There is no container {inside} in the records.", inside=record.inside)
        }
    return {}


def _keep_untouched(
    typed: ContainerRecord, was: ContainerRecord, values: Mapping[str, str]
) -> ContainerRecord:
    shown = write_values(was)
    untouched = {name for name, text in shown.items() if values.get(name, text).strip() == text}
    kept = {
        each.name: getattr(was, each.name)
        for each in fields(typed)
        if _columns_of(each.name) <= untouched
    }
    return replace(typed, **kept)


def _columns_of(field_name: str) -> set[str]:
    if field_name == "questions":
        return {"questions_role", "questions_phone", "questions_person"}
    return {_COLUMNS.get(field_name, field_name)}
