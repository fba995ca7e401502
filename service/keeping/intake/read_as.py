"""Reads records as it was said how; findings name files as they came."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from service.errors import UnreadableFileError
from service.findings import Finding
from service.keeping.desk import Desk
from service.keeping.intake.how_read import PACKINGS, HowRead
from service.keeping.intake.kept_files import KeptFiles
from service.pipeline.read import Content, read_source
from service.records.mapping.choose import Mappings
from service.records.mapping.mapping import OBJECTS
from service.records.record import Collection, ContainerRecord
from service.sentence import Sentence
from service.store.load_records import load_containers
from service.store.open import reading

_ALONE = ("xlsx", "xlsm", "ods", "json")
_TABLES = ("csv", "tsv", "txt")


def read_as(desk: Desk, files: Mapping[str, Content], how: HowRead) -> Collection:
    """Read the records of a source; one that has none is an empty collection.

    Raises:
        RecordsError: When nothing of the source can be used.
        JobError: When the reader had to be stopped.
    """
    if not files:
        return Collection()
    mappings = Mappings({_name(how, table): one for table, one in how.mappings.items()})
    names = _own_names(files, how)
    own = {name: files[came] for name, came in names.items()}
    found = read_source(own, desk.workshop.workers, mappings)
    found = replace(found, findings=tuple(_tell(found.findings, names, how)))
    return _with_boxes(desk, found) if how.boxes_made else found


def refuse_mixed(kept: KeptFiles, how: HowRead) -> None:
    """Refuse what cannot be read together, rather than read a part of it.

    Raises:
        UnreadableFileError: When it is several workbooks or documents, or two of one table.
    """
    names = tuple(kept.records)
    alone = [name for name in names if name.rpartition(".")[2].casefold() in _ALONE]
    others = [name for name in names if name.rpartition(".")[2].casefold() in (*_TABLES, *_ALONE)]
    if alone and len(others) > 1:
        raise UnreadableFileError(alone[0], tried="other tables came with it; send it by itself")
    tables = [name for name in others if name not in alone]
    for name in tables:
        if name not in how.tables.values():
            tried = Sentence("another file holds the same kind of rows; send one after the other")
            raise UnreadableFileError(name, tried=tried)


def _name(how: HowRead, table: str) -> str:
    return how.named if table == OBJECTS and how.named else f"{how.named} {table}".strip()


def _own_names(files: Mapping[str, Content], how: HowRead) -> dict[str, str]:
    """Give each file the name by which the readers know its table, with that it came with."""
    tables = dict(how.tables)
    if how.boxes_made and OBJECTS in tables:
        tables[PACKINGS] = tables[OBJECTS]
    named = {f"{table}.csv": name for table, name in tables.items()}
    return named | {name: name for name in files if name not in tables.values()}


def _tell(findings: Iterable[Finding], names: Mapping[str, str], how: HowRead) -> Iterator[Finding]:
    """Name files as they came, once; an object that lies in no container is no fault."""
    told = set[Finding]()
    boxes = {heading for heading, _ in how.mappings[PACKINGS].headings} if how.boxes_made else set()
    for one in findings:
        lies_nowhere = one.code == "row-without-number" and one.where.column in boxes
        if lies_nowhere or (one.code == "mapping-used" and not how.named):
            continue
        came = replace(
            one, where=replace(one.where, file=names.get(one.where.file, one.where.file))
        )
        if came not in told:
            told.add(came)
            yield came


def _with_boxes(desk: Desk, found: Collection) -> Collection:
    """Add the containers that only a column of the objects names; the store has others."""
    wanted = dict.fromkeys(packing.container_number for packing in found.packings)
    with reading(desk.engine) as connection:
        known = {one.container_number for one in load_containers(connection, list(wanted))}
    known |= {one.container_number for one in found.containers}
    made = tuple(ContainerRecord(number) for number in wanted if number not in known)
    return replace(found, containers=(*found.containers, *made))
