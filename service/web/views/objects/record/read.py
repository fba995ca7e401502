"""Reads what was typed of an object with the readers of spreadsheets; faults by field."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, fields, replace

from service.keeping.checks.gone_hazards import GoneHazard
from service.languages.saying import say
from service.records.read_objects import read_objects
from service.records.record import ObjectRecord
from service.records.sources.columns import OBJECT_COLUMNS
from service.web.views.objects.record.hazards import Row, read_hazard_rows
from service.web.views.objects.record.values import HAZARD_FIELDS, write_values
from service.web.views.shell.typed import make_typed_row, tell_faults

_NUMBER = "object_number"
_MANY = ("cautions", "hang_factors")
_COLUMNS = {"dimensions_text": "dimensions", "weight_text": "weight"}
"""The columns of fields that are called otherwise."""
_NOT_TYPED = ("photos", "source")


@dataclass(frozen=True, slots=True)
class Typed:
    """A form as it was sent: fields, rows of hazards, and which of these are said to be gone."""

    values: Mapping[str, str]
    rows: tuple[Row, ...] = ()
    gone: frozenset[int] = frozenset()

    @property
    def number(self) -> str:
        """The number that was typed, or that the form is about."""
        return self.values.get(_NUMBER, "").strip()


@dataclass(frozen=True, slots=True)
class TypedObject:
    """A record as it was typed, the hazards it loses, and what could not be understood."""

    record: ObjectRecord
    gone: tuple[GoneHazard, ...]
    faults: Mapping[str, str]


def gather_typed(sent: Sequence[tuple[str, str]]) -> Typed:
    """Put the fields of a form together: what was ticked becomes one list, hazards become rows."""
    values = dict(sent)
    values.pop("form_token", None)
    for name in _MANY:
        ticked = [text.strip() for key, text in sent if key == name and text.strip()]
        values[name] = "; ".join(ticked)
    values["restricted"] = "yes" if values.get("restricted") == "yes" else "no"
    gone = {int(text) for key, text in sent if key == "hazard_gone" and text.isdecimal()}
    return Typed(values, tuple(_gather_rows(sent)), frozenset(gone))


def read_object(typed: Typed, *, was: ObjectRecord | None = None) -> TypedObject:
    """Read an object; what was not typed anew stays just as it was, whatever its text lost."""
    values = {name: text for name, text in typed.values.items() if name != "hazards"}
    row, notebook = make_typed_row(values, OBJECT_COLUMNS)
    found = read_objects([row])
    hazards = read_hazard_rows(typed.rows, typed.gone, was.hazards if was else ())
    # Cautions in the museum's own words are printed as they are written.
    told = {name: words for name, words in tell_faults(notebook).items() if name not in _MANY}
    faults = {**told, **hazards.faults}
    if not found:
        return TypedObject(ObjectRecord(""), (), {**faults, _NUMBER: say("It needs a number.")})
    record = found[0] if was is None else _keep_untouched(found[0], was, values)
    source = was.source if was else {}
    return TypedObject(
        replace(record, hazards=hazards.hazards, source=source), hazards.gone, faults
    )


def _gather_rows(sent: Sequence[tuple[str, str]]) -> Iterator[Row]:
    columns = [
        [text.strip() for key, text in sent if key == f"hazard_{name}"] for name in HAZARD_FIELDS
    ]
    for cells in zip(*columns, strict=False):
        yield dict(zip(HAZARD_FIELDS, cells, strict=True))


def _keep_untouched(
    typed: ObjectRecord, was: ObjectRecord, values: Mapping[str, str]
) -> ObjectRecord:
    shown = write_values(was)
    untouched = {
        name for name, text in shown.items() if _plain(values.get(name, text)) == _plain(text)
    }
    kept = {
        each.name: getattr(was, each.name)
        for each in fields(typed)
        if each.name in _NOT_TYPED or _COLUMNS.get(each.name, each.name) in untouched
    }
    return replace(typed, **kept)


def _plain(text: str) -> str:
    """Give a text as it is compared: browsers send line breaks of their own."""
    return "\n".join(line.strip() for line in text.strip().splitlines())
