"""A mapping as plain data, as TOML, and back."""

from __future__ import annotations

import json
import tomllib
from collections.abc import Iterator, Mapping

from service.errors import UnreadableFileError
from service.findings import Finding
from service.records.mapping.check import check_mapping, tell_unusable
from service.records.mapping.mapping import OBJECTS, ColumnMapping
from service.records.rows.text import quote_text
from service.records.sources.decoding import decode_utf
from service.sentence import Sentence

_TEXTS = ("table", "encoding", "delimiter", "sheet")
_GROUPS = ("headings", "fixed", "units")


def read_mapping(document: Mapping[str, object]) -> tuple[ColumnMapping, tuple[Finding, ...]]:
    """Read a mapping from plain data, and say everything that is wrong with it."""
    wrong = tuple(_check_shape(document))
    texts = {name: document.get(name) or "" for name in _TEXTS}
    table, encoding, delimiter, sheet = (
        text if isinstance(text, str) else "" for text in texts.values()
    )
    ignored = document.get("ignored")
    mapping = ColumnMapping(
        table=table or OBJECTS,
        headings=tuple(_group(document, "headings").items()),
        ignored=tuple(each for each in ignored if isinstance(each, str))
        if isinstance(ignored, list)
        else (),
        fixed=_group(document, "fixed"),
        units=_group(document, "units"),
        encoding=encoding,
        delimiter=delimiter,
        sheet=sheet,
        decimal_comma=document.get("decimal_comma") is True,
    )
    return mapping, (*wrong, *check_mapping(mapping))


def read_mapping_file(data: bytes, *, name: str) -> tuple[ColumnMapping, tuple[Finding, ...]]:
    """Read a mapping from a TOML file.

    Raises:
        UnreadableFileError: When it is not TOML.
    """
    try:
        return read_mapping(tomllib.loads(decode_utf(data, name=name)))
    except (ValueError, RecursionError) as error:
        raise UnreadableFileError(
            name, tried=Sentence("it is not TOML ({error})", error=error)
        ) from error


def mapping_data(mapping: ColumnMapping) -> dict[str, object]:
    """Give a mapping as plain data, which `read_mapping` reads."""
    return {
        "table": mapping.table,
        "headings": dict(mapping.headings),
        "ignored": list(mapping.ignored),
        "fixed": dict(mapping.fixed),
        "units": dict(mapping.units),
        "encoding": mapping.encoding,
        "delimiter": mapping.delimiter,
        "sheet": mapping.sheet,
        "decimal_comma": mapping.decimal_comma,
    }


def write_mapping_file(mapping: ColumnMapping) -> str:
    """Write a mapping as TOML, which `read_mapping_file` reads."""
    return "\n".join(_lines(mapping)) + "\n"


def _lines(mapping: ColumnMapping) -> Iterator[str]:
    data = mapping_data(mapping)
    for name in _TEXTS:
        if data[name]:
            yield f"{name} = {_quoted(str(data[name]))}"
    if mapping.decimal_comma:
        yield "decimal_comma = true"
    if mapping.ignored:
        yield f"ignored = [{', '.join(map(_quoted, mapping.ignored))}]"
    for name in _GROUPS:
        group = _group(data, name)
        if group:
            yield f"\n[{name}]"
            yield from (f"{_quoted(key)} = {_quoted(value)}" for key, value in group.items())


def _quoted(text: str) -> str:
    """Write a basic string of TOML, which takes what JSON writes but for one sign."""
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")


def _group(document: Mapping[str, object], name: str) -> dict[str, str]:
    group = document.get(name)
    if not isinstance(group, dict):
        return {}
    return {key: value for key, value in group.items() if isinstance(value, str)}


def _check_shape(document: Mapping[str, object]) -> Iterator[Finding]:
    known = (*_TEXTS, *_GROUPS, "ignored", "decimal_comma")
    for name, value in document.items():
        if name not in known:
            yield tell_unusable(
                name, Sentence("{given} says nothing in a mapping.", given=quote_text(name))
            )
        elif name in _TEXTS and not isinstance(value, str):
            yield tell_unusable(name, Sentence("{name} is a text, in quotes.", name=name))
        elif name in _GROUPS and not _is_group(value):
            yield tell_unusable(name, Sentence("{name} is a group of texts.", name=name))
        elif name == "ignored" and not _is_list(value):
            yield tell_unusable(name, Sentence("ignored is a list of headings."))
        elif name == "decimal_comma" and not isinstance(value, bool):
            yield tell_unusable(name, Sentence("decimal_comma is true or false."))


def _is_group(value: object) -> bool:
    return isinstance(value, dict) and all(isinstance(each, str) for each in value.values())


def _is_list(value: object) -> bool:
    return isinstance(value, list) and all(isinstance(each, str) for each in value)
