"""Paths of mappings: which heading of a museum's own table fills which field; a first look."""

from __future__ import annotations

import json
from dataclasses import asdict
from datetime import datetime
from typing import Annotated

from fastapi import APIRouter, File, Path, Response, UploadFile
from pydantic import BaseModel, ConfigDict, Field, JsonValue

from service.errors import NotFoundError, UnusableMappingError
from service.keeping.intake.reading import look_into
from service.records.mapping.document import mapping_data, read_mapping
from service.records.mapping.mapping import ColumnMapping
from service.store.handles import Connection
from service.store.kept.mappings import (
    SavedMapping,
    forget_mapping,
    list_mappings,
    load_mapping,
    save_mapping,
)
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import SeenRecord, TheActing, TheCounter
from service.web.store.intake.imports import receive
from service.web.store.matching import refuse_other, tag_text
from service.web.store.records.shapes import STRICT

router = APIRouter(route_class=GatedRoute)

_EXAMPLE: dict[str, JsonValue] = {
    "headings": {"Inventarnummer": "object_number", "Benennung": "title"},
    "ignored": ["Notiz"],
    "units": {"dimensions": "cm"},
    "decimal_comma": True,
}

MappingName = Annotated[str, Path(min_length=1, max_length=200, examples=["Catalogue export"])]


class MappingShape(BaseModel):
    """Which heading fills which field, and how the table is written; what is empty is found out.

    `headings` names our fields by heading, `ignored` the headings that are known and not used,
    `fixed` the fields that every row has alike, `units` those of plain numbers by field. Objects
    may have `height`, `width`, `depth`, `length`, `diameter`, `thickness` and `circumference` each
    in a column of its own. `decimal_comma` reads 1.234,5 in measures.
    """

    model_config = STRICT

    table: str = "objects"
    headings: dict[str, str] = Field(default={}, max_length=200)
    ignored: list[str] = Field(default=[], max_length=200)
    fixed: dict[str, str] = Field(default={}, max_length=200)
    units: dict[str, str] = Field(default={}, max_length=200)
    encoding: str = ""
    delimiter: str = ""
    sheet: str = ""
    decimal_comma: bool = False


class MappingBody(BaseModel):
    """A mapping to save."""

    model_config = STRICT | ConfigDict(json_schema_extra={"examples": [{"mapping": _EXAMPLE}]})

    mapping: MappingShape


class MappingView(BaseModel):
    """A saved mapping, and who saved it last."""

    name: str
    mapping: MappingShape
    by: str
    at: datetime


class MappingsView(BaseModel):
    """The mappings that are saved, the latest first: of several that fit, the first is taken."""

    mappings: list[MappingView]


class SampleForm(BaseModel):
    """A file to look into, and what is known of it; what is empty is found out."""

    model_config = STRICT | ConfigDict(
        json_schema_extra={"examples": [{"file": ["untidy_export.csv"]}]}
    )

    file: UploadFile = Field(description="A table: CSV, XLSX or ODS; at most 64 MB.")
    table: str = Field(default="objects", description="objects, containers or packings")
    encoding: str = ""
    delimiter: str = ""
    sheet: str = ""


class SampleView(BaseModel):
    """What a file holds: its headings, its first rows, and what each heading may mean.

    `form` is "delimited", "workbook", or "described" for a file that says itself what its fields
    are. `guess` is a mapping to begin with, in which `unknown` headings do not stand; `missing` are
    fields that every row needs. `saved` names the saved mapping that was made for these headings.
    """

    file: str
    form: str
    table: str
    headings: list[str]
    rows: list[list[str]]
    guess: MappingShape
    unknown: list[str]
    missing: list[str]
    encoding: str
    delimiter: str
    sheet: str
    sheets: list[str]
    saved: str


@router.post("/api/imports/sample", dependencies=[needs(Role.MANAGE)])
def sample(form: Annotated[SampleForm, File()], acting: TheActing) -> SampleView:
    """Look into a file before it is taken in; nothing is changed."""
    ((name, data),) = receive([form.file]).files.items()
    known = form.model_dump(exclude={"file"})
    like = _to_mapping("sample", {**known, "headings": {}}, complete=False)
    with acting.counter.working() as desk:
        found = look_into(desk, name, data, like=like)
    return SampleView.model_validate({**asdict(found), "guess": mapping_data(found.guess)})


@router.get("/api/mappings", dependencies=[needs(Role.VIEW)])
def mappings(counter: TheCounter) -> MappingsView:
    """List the mappings that are saved."""
    with counter.reading() as connection:
        return MappingsView(mappings=[_show(one) for one in list_mappings(connection)])


@router.get("/api/mappings/{name}", dependencies=[needs(Role.VIEW)])
def mapping(name: MappingName, response: Response, counter: TheCounter) -> MappingView:
    """Give one mapping; its ETag is needed to change it."""
    with counter.reading() as connection:
        found = load_mapping(connection, name)
    response.headers["ETag"] = _tag(found.mapping)
    return _show(found)


@router.put("/api/mappings/{name}", dependencies=[needs(Role.MANAGE)])
def keep_mapping(
    name: MappingName,
    body: MappingBody,
    response: Response,
    acting: TheActing,
    if_match: SeenRecord = "",
) -> MappingView:
    """Save a mapping, new or in the place of the one you have seen.

    It is taken by itself for every table that has just the headings it names, used or ignored.
    """
    wanted = _to_mapping(name, body.mapping.model_dump(), complete=True)
    with acting.counter.writing() as connection:
        current = _find(connection, name)
        if current is not None and _tag(current) != _tag(wanted):
            refuse_other(
                if_match, _tag(current), yours=mapping_data(wanted), current=mapping_data(current)
            )
        save_mapping(connection, name, wanted, stamp=acting.stamp)
        found = load_mapping(connection, name)
    response.headers["ETag"] = _tag(found.mapping)
    return _show(found)


@router.delete("/api/mappings/{name}", dependencies=[needs(Role.MANAGE)])
def drop_mapping(name: MappingName, acting: TheActing) -> MappingsView:
    """Take a mapping away and give those that are left; what was read by it stays."""
    with acting.counter.writing() as connection:
        forget_mapping(connection, name, stamp=acting.stamp)
        return MappingsView(mappings=[_show(one) for one in list_mappings(connection)])


def _to_mapping(name: str, document: dict[str, object], *, complete: bool) -> ColumnMapping:
    """Read a mapping that was sent; one that is not complete yet needs no headings.

    Raises:
        UnusableMappingError: When no table can be read by it.
    """
    read, wrong = read_mapping(document)
    told = [one.message for one in wrong if complete or one.where.column != "headings"]
    if told:
        raise UnusableMappingError(name, reasons=told)
    return read


def _find(connection: Connection, name: str) -> ColumnMapping | None:
    try:
        return load_mapping(connection, name).mapping
    except NotFoundError:
        return None


def _tag(mapping: ColumnMapping) -> str:
    return tag_text(json.dumps(mapping_data(mapping), sort_keys=True))


def _show(saved: SavedMapping) -> MappingView:
    shape = MappingShape.model_validate(mapping_data(saved.mapping))
    return MappingView(name=saved.name, mapping=shape, by=saved.stamp.actor, at=saved.stamp.at)
