"""Objects to a LIDO 1.1 file, one record after the other.

It carries neither valuation, which no record has, nor location, which only containers have.
Restricted objects are left out: LIDO files are made to be handed on, and LIDO has no word
that would keep them back.
"""

from __future__ import annotations

from collections.abc import Iterator

from service.findings import Finding, Where, make_finding
from service.records.lido.element import NAMESPACE, TERMINOLOGY
from service.records.lido.export.measures import write_measures
from service.records.lido.export.notes import list_notes
from service.records.lido.export.tree import PREFIX, Tree, add, set_language, start, to_bytes
from service.records.lido.notes import LISTS, TEXTS, name_kind
from service.records.record import Collection, ObjectRecord
from service.sentence import Sentence

_HEAD = f'<?xml version="1.0" encoding="UTF-8"?>\n<{PREFIX}:lidoWrap xmlns:{PREFIX}="{NAMESPACE}">'
_TAIL = f"</{PREFIX}:lidoWrap>\n"
_INVENTORY_NUMBER = f"http://{TERMINOLOGY}lido00113"
_PRODUCTION = f"http://{TERMINOLOGY}lido00007"
_LOCAL = "local"

# Records do not say in which language they are (BCP 47 has a code for that).
_UNDETERMINED = "und"


def write_lido(collection: Collection) -> Iterator[bytes]:
    """Give the pieces of a file with every object that is not restricted."""
    yield _HEAD.encode()
    for record in collection.objects:
        if not record.restricted:
            yield b"\n" + to_bytes(_make_record(record, museum=collection.museum.name))
    yield b"\n" + _TAIL.encode()


def note_left_out(collection: Collection) -> tuple[Finding, ...]:
    """Name the objects that the file does not have."""
    return tuple(
        make_finding(
            "not-exported",
            Where(object_number=record.object_number),
            Sentence("The record is restricted and was left out of the LIDO file."),
        )
        for record in collection.objects
        if record.restricted
    )


def _make_record(record: ObjectRecord, *, museum: str) -> Tree:
    root = start("lido")
    add(root, "lidoRecID", record.object_number, kind=_LOCAL)
    described = add(root, "descriptiveMetadata")
    set_language(described, _UNDETERMINED)
    kind = add(described, "objectClassificationWrap/objectWorkTypeWrap/objectWorkType")
    if record.object_name:
        add(kind, "term", record.object_name)
    _identify(add(described, "objectIdentificationWrap"), record)
    if record.period:
        _date(add(described, "eventWrap/eventSet/event"), record.period)
    managed = add(root, "administrativeMetadata")
    set_language(managed, _UNDETERMINED)
    _describe_record(add(managed, "recordWrap"), record, museum=museum)
    _name_photos(managed, record)
    return root


def _identify(identification: Tree, record: ObjectRecord) -> None:
    add(identification, "titleWrap/titleSet/appellationValue", record.title)
    repository = add(identification, "repositoryWrap/repositorySet")
    add(repository, "workID", record.object_number, kind=_INVENTORY_NUMBER)
    for number in record.former_numbers:
        add(repository, "workID", number, kind="former number")
    _write_notes(identification, record)
    write_measures(identification, record)
    if record.materials:
        group = add(identification, "objectMaterialsTechWrap/objectMaterialsTechSet/materialsTech")
        for material in record.materials:
            add(add(group, "termMaterialsTech", kind="material"), "term", material)


def _write_notes(identification: Tree, record: ObjectRecord) -> None:
    notes = list_notes(record)
    wrap = add(identification, "objectDescriptionWrap") if notes else identification
    for column in (*TEXTS, *LISTS):
        for text in notes.get(column, ()):
            each = add(wrap, "objectDescriptionSet", kind=name_kind(column))
            add(each, "descriptiveNoteValue", text)


def _date(event: Tree, period: str) -> None:
    kind = add(event, "eventType")
    add(kind, "conceptID", _PRODUCTION, kind="URI")
    set_language(add(kind, "term", "Production"), "en")
    add(event, "eventDate/displayDate", period)


def _describe_record(wrap: Tree, record: ObjectRecord, *, museum: str) -> None:
    add(wrap, "recordID", record.object_number, kind=_LOCAL)
    set_language(add(add(wrap, "recordType"), "term", "item-level record"), "en")
    add(wrap, "recordSource/legalBodyName/appellationValue", museum)
    if record.catalogue_url:
        add(wrap, "recordInfoSet/recordInfoLink", record.catalogue_url)


def _name_photos(managed: Tree, record: ObjectRecord) -> None:
    wrap = add(managed, "resourceWrap") if record.photos else managed
    for photo in record.photos:
        each = add(wrap, "resourceSet")
        # A reader takes `%41` for A, as in an address.
        add(each, "resourceRepresentation/linkResource", photo.file.replace("%", "%25"))
        set_language(add(add(each, "resourcePerspective"), "term", photo.role.value), "en")
