"""Objects of a document, JSON or TOML, to rows; values of a wrong type are noted."""

from __future__ import annotations

import json
from collections.abc import Mapping

from service.findings import Where
from service.records.rows.cell import Item
from service.records.rows.notebook import Notebook
from service.records.rows.row import Row, Value
from service.records.sources.columns import Columns
from service.sentence import Sentence

_NUMBERED = ("object_number", "container_number", "inside")
"""Numbers that are words: one that came as a number has perhaps lost a zero."""

_GROUPS = ("questions", "checks", "packing_checks")
"""Objects within an object whose keys stand beside the others, as they do in a table."""


def make_row(
    entry: Mapping[str, object],
    columns: Columns,
    *,
    name: str,
    pointer: str,
    notebook: Notebook,
) -> Row:
    """Make a row of an object; `pointer` is the object's place in the document ("objects/3").

    The keys of an object of `_GROUPS` stand beside the others, with its name in front.
    """
    reader = _EntryReader(columns, name, pointer, notebook)
    values: dict[str, Value] = {}
    headings: dict[str, str] = {}
    for key, path, value in reader.flatten(entry):
        read = reader.read(key, path, value)
        if read is not None:
            values[key], headings[key] = read, path
    return Row(
        values=values,
        headings=headings,
        where=Where(file=name),
        notebook=notebook,
        source={key: _as_text(value) for key, value in entry.items()},
        retyped=frozenset(key for key in _NUMBERED if _is_number(entry.get(key))),
    )


class _EntryReader:
    """Reads the values of one object and notes those it cannot use."""

    def __init__(self, columns: Columns, name: str, pointer: str, notebook: Notebook) -> None:
        self._columns = columns
        self._name = name
        self._pointer = pointer
        self._notebook = notebook

    def flatten(self, entry: Mapping[str, object]) -> list[tuple[str, str, object]]:
        """Give column, place and value of everything in an object."""
        flat: list[tuple[str, str, object]] = []
        for key, value in entry.items():
            path = f"{self._pointer}/{key}".lstrip("/")
            if key in _GROUPS and isinstance(value, dict):
                flat.extend(
                    (f"{key}_{inner}", f"{path}/{inner}", of) for inner, of in value.items()
                )
            else:
                flat.append((key, path, value))
        return flat

    def read(self, column: str, path: str, value: object) -> Value | None:
        """Give a value in the form a table would have it; None where it cannot be used."""
        if column not in self._columns.names:
            self._note("unknown-column", path, Sentence("The field is not known."))
            return None
        if isinstance(value, list) and column in self._columns.lists:
            items = [self._item(column, f"{path}/{at}", item) for at, item in enumerate(value)]
            return tuple(item for item in items if item is not None)
        text = self._scalar(column, value)
        if text is None:
            self._refuse(path, value)
        return text

    def _scalar(self, column: str, value: object) -> str | None:
        if isinstance(value, str) or value is None:
            return value or ""
        if isinstance(value, bool):
            return ("yes" if value else "no") if column in self._columns.yes_or_no else None
        if isinstance(value, int | float) and column in self._columns.counts:
            return f"{value:.15g}" if isinstance(value, float) else str(value)
        return None

    def _item(self, column: str, path: str, item: object) -> Item | None:
        if isinstance(item, str):
            return item
        if isinstance(item, dict) and column in self._columns.records:
            return {
                key: value
                for key, value in item.items()
                if self._is_text(f"{path}/{key}", value) and isinstance(value, str)
            }
        self._refuse(path, item)
        return None

    def _is_text(self, path: str, value: object) -> bool:
        if value is not None and not isinstance(value, str):
            self._refuse(path, value)
        return isinstance(value, str)

    def _refuse(self, path: str, value: object) -> None:
        words = Sentence("A {given} cannot stand here.", given=_type_name(value))
        self._note("wrong-type", path, words)

    def _note(self, code: str, path: str, message: Sentence) -> None:
        self._notebook.note(code, Where(file=self._name, column=path), message)


def _is_number(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)


_TYPE_NAMES: Mapping[type, Sentence] = {
    str: Sentence("text"),
    int: Sentence("number"),
    float: Sentence("number"),
    list: Sentence("list"),
    dict: Sentence("group of fields"),
}


def _type_name(value: object) -> Sentence:
    if isinstance(value, bool):
        return Sentence("yes or no")
    return _TYPE_NAMES.get(type(value), Sentence("value of another kind"))


def _as_text(value: object) -> str:
    return value if isinstance(value, str) else json.dumps(value, ensure_ascii=False, default=str)
