"""What is wrong with a mapping, in words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from service.errors import UnusableMappingError
from service.findings import Finding, Where, make_finding
from service.records.mapping.mapping import (
    AXES,
    NEEDED,
    TABLE_COLUMNS,
    ColumnMapping,
    fields_of,
    units_of,
)
from service.records.rows.text import quote_text
from service.records.sources.columns import heading_key
from service.records.sources.table import COLUMNS_LIMIT
from service.sentence import Sentence

ENCODINGS = (
    *("utf-8", "utf-16", "utf-16-le", "utf-16-be", "utf-32"),
    *("windows-1250", "windows-1251", "windows-1252", "windows-1253", "windows-1254"),
    *("iso-8859-1", "iso-8859-2", "iso-8859-5", "iso-8859-7", "iso-8859-9", "iso-8859-15"),
    *("mac-roman", "cp437", "cp850", "cp852", "koi8-r", "shift-jis", "euc-jp", "gb18030", "big5"),
)
"""The encodings that may be named; others are found out, or the file is saved again."""

DELIMITERS = (",", ";", "\t", "|")

TEXT_LIMIT = 1_000
"""Characters of a heading, a fixed value or the name of a sheet; common practice, no source."""


def check_mapping(mapping: ColumnMapping) -> tuple[Finding, ...]:
    """Say everything that keeps a mapping from being used."""
    if mapping.table not in TABLE_COLUMNS:
        known = ", ".join(TABLE_COLUMNS)
        return (
            tell_unusable(
                "table",
                Sentence(
                    "{given} is none of: {known}.", given=quote_text(mapping.table), known=known
                ),
            ),
        )
    return (
        *_check_headings(mapping),
        *_check_fields(mapping),
        *_check_fixed(mapping),
        *_check_units(mapping),
        *_check_form(mapping),
    )


def refuse_unusable(name: str, mapping: ColumnMapping) -> None:
    """Refuse a mapping with which no table can be read.

    Raises:
        UnusableMappingError: When something is wrong with it; the error says all of it.
    """
    wrong = check_mapping(mapping)
    if wrong:
        raise UnusableMappingError(name, reasons=[one.message for one in wrong])


def tell_unusable(column: str, message: Sentence) -> Finding:
    """Make a finding about one part of a mapping."""
    return make_finding("unusable-mapping", Where(column=column), message)


def _check_headings(mapping: ColumnMapping) -> Iterator[Finding]:
    named = [heading for heading, _ in mapping.headings]
    headings = [*named, *mapping.ignored]
    if len(headings) > COLUMNS_LIMIT:
        yield tell_unusable(
            "headings",
            Sentence("More than {columns_limit} headings are named.", columns_limit=COLUMNS_LIMIT),
        )
    for heading in headings:
        if not heading_key(heading) or len(heading) > TEXT_LIMIT:
            yield tell_unusable(
                "headings", Sentence("{given} cannot be a heading.", given=quote_text(heading))
            )
    ignored = set(map(heading_key, mapping.ignored))
    for heading in named:
        if heading_key(heading) in ignored:
            message = Sentence(
                "{heading} is used and ignored at once.", heading=quote_text(heading)
            )
            yield tell_unusable("headings", message)
    for key, count in Counter(map(heading_key, named)).items():
        if count > 1:
            alike = [heading for heading in named if heading_key(heading) == key]
            message = Sentence(
                "The heading {alike} is named {count} times.",
                alike=quote_text(alike[0]),
                count=count,
            )
            yield tell_unusable("headings", message)


def _check_fields(mapping: ColumnMapping) -> Iterator[Finding]:
    known = fields_of(mapping.table)
    by_field: dict[str, list[str]] = {}
    for heading, name in mapping.headings:
        by_field.setdefault(name, []).append(heading)
        if name not in known:
            message = Sentence(
                "{heading} is to be {name}, which is no field.",
                heading=quote_text(heading),
                name=quote_text(name),
            )
            yield tell_unusable("headings", message)
    for name, headings in by_field.items():
        if len(headings) > 1:
            told = ", ".join(map(quote_text, headings))
            yield tell_unusable(
                "headings",
                Sentence(
                    "{told} are both to be {name}; one field takes one.", told=told, name=name
                ),
            )
    for name in NEEDED[mapping.table]:
        if name not in by_field and (name == NEEDED[mapping.table][0] or name not in mapping.fixed):
            yield tell_unusable(
                "headings", Sentence("No heading is {name}, which every row needs.", name=name)
            )
    axes = [name for name in AXES if name in by_field]
    if axes and "dimensions" in by_field:
        message = Sentence(
            "Both dimensions and {axes} are named; the one holds the others.", axes=", ".join(axes)
        )
        yield tell_unusable("headings", message)


def _check_fixed(mapping: ColumnMapping) -> Iterator[Finding]:
    filled = {name for _, name in mapping.headings}
    number = NEEDED[mapping.table][0]
    for name, value in mapping.fixed.items():
        if name not in fields_of(mapping.table):
            yield tell_unusable("fixed", Sentence("{given} is no field.", given=quote_text(name)))
        elif name == number:
            yield tell_unusable(
                "fixed", Sentence("{name} differs from row to row and cannot be fixed.", name=name)
            )
        elif name in filled:
            yield tell_unusable(
                "fixed", Sentence("{name} is filled by a heading and fixed at once.", name=name)
            )
        if len(value) > TEXT_LIMIT:
            yield tell_unusable(
                "fixed", Sentence("What is fixed for {given} is too long.", given=quote_text(name))
            )


def _check_units(mapping: ColumnMapping) -> Iterator[Finding]:
    for name, unit in mapping.units.items():
        possible = units_of(name) if name in fields_of(mapping.table) else ()
        if not possible:
            yield tell_unusable(
                "units", Sentence("{given} is no field that is measured.", given=quote_text(name))
            )
        elif unit not in possible:
            known = ", ".join(possible)
            yield tell_unusable(
                "units",
                Sentence(
                    "{name} cannot be in {given}, only {known}.",
                    name=name,
                    given=quote_text(unit),
                    known=known,
                ),
            )


def _check_form(mapping: ColumnMapping) -> Iterator[Finding]:
    if mapping.encoding and mapping.encoding.casefold() not in ENCODINGS:
        known = ", ".join(ENCODINGS)
        message = Sentence(
            "The encoding {encoding} is none of: {known}.",
            encoding=quote_text(mapping.encoding),
            known=known,
        )
        yield tell_unusable("encoding", message)
    if mapping.delimiter and mapping.delimiter not in DELIMITERS:
        message = Sentence(
            "{delimiter!r} is no delimiter; a comma, semicolon, tab or | is.",
            delimiter=mapping.delimiter,
        )
        yield tell_unusable("delimiter", message)
    if len(mapping.sheet) > TEXT_LIMIT:
        yield tell_unusable("sheet", Sentence("The name of the sheet is too long."))
