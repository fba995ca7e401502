"""The tables in what was sent, each with its first rows and what its headings may mean."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from service.keeping.desk import Desk
from service.keeping.intake.how_read import PACKINGS, HowRead
from service.keeping.intake.kept_files import KeptFiles
from service.keeping.intake.reading import look_into
from service.records.mapping.choose import Mappings, find_fitting
from service.records.mapping.mapping import AXES, OBJECTS, TABLE_COLUMNS, ColumnMapping
from service.records.mapping.sample import Sample
from service.records.sources.columns import heading_key
from service.store.kept.mappings import load_mappings
from service.store.open import reading

BOX_FIELDS = ("container_number", "layer", "compartment")
"""What a column of the objects may say of where each lies."""
_DELIMITED = frozenset({"csv", "tsv", "txt"})
_WORKBOOKS = frozenset({"xlsx", "xlsm", "ods"})


@dataclass(frozen=True, slots=True)
class Part:
    """One table.

    Attributes:
        file: The file it stands in.
        sample: Its headings, first rows and what the headings may mean.
        boxes: Headings of a table of objects that say where each lies, with their fields.
        mappings: The saved mappings that were made for these headings, by table.
    """

    file: str
    sample: Sample
    boxes: Mapping[str, str]
    mappings: Mapping[str, ColumnMapping]

    @property
    def unsure(self) -> tuple[str, ...]:
        """The headings of which nothing is known."""
        return tuple(one for one in self.sample.unknown if one not in self.boxes)

    @property
    def is_clear(self) -> bool:
        """Tell whether nothing has to be asked about it."""
        return bool(self.mappings) or not (self.sample.missing or self.unsure)


def find_parts(
    desk: Desk, kept: KeptFiles, told: Mapping[str, ColumnMapping] | None = None
) -> tuple[Part, ...]:
    """Find the tables; `told` says by file what its rows are and how it is written.

    Raises:
        RecordsError: When a file cannot be read.
        JobError: When the reader had to be stopped.
    """
    with reading(desk.engine) as connection:
        saved = load_mappings(connection)
    return tuple(
        _describe(sample, saved)
        for name, path in kept.records.items()
        for sample in _look(desk, name, path.read_bytes(), (told or {}).get(name))
    )


def choose_how(parts: tuple[Part, ...]) -> HowRead:
    """Say how tables are read where nobody says otherwise: by what is saved, or as it seems."""
    how = HowRead({part.sample.table: part.file for part in parts if _is_delimited(part.file)})
    for part in parts:
        mappings = part.mappings or _guessed(part)
        how = replace(
            how,
            mappings={**how.mappings, **mappings},
            boxes_made=how.boxes_made or (part.sample.table == OBJECTS and PACKINGS in mappings),
            named=how.named or part.sample.saved,
        )
    return how


def with_boxes(
    objects: ColumnMapping, boxes: Mapping[str, str], headings: tuple[str, ...]
) -> dict[str, ColumnMapping]:
    """Give the mappings of a table of objects in which the container of each stands, too.

    Each names the headings of the other as ignored, so that both were made for the same table.
    """
    number = next((heading for heading, name in objects.headings if name == "object_number"), "")
    used = {**boxes, number: "object_number"}
    packings = ColumnMapping(
        PACKINGS,
        tuple(used.items()),
        ignored=_rest(headings, used),
        encoding=objects.encoding,
        delimiter=objects.delimiter,
        sheet=objects.sheet,
    )
    ignored = _rest(headings, dict(objects.headings))
    return {OBJECTS: replace(objects, ignored=ignored), PACKINGS: packings}


def _rest(headings: tuple[str, ...], used: Mapping[str, str]) -> tuple[str, ...]:
    keys = set(map(heading_key, used))
    return tuple(dict.fromkeys(one for one in headings if heading_key(one) not in {"", *keys}))


def _guessed(part: Part) -> dict[str, ColumnMapping]:
    """Map what readers would not find by themselves: single measures, and where objects lie."""
    sample = part.sample
    measures = [name for _, name in sample.guess.headings if name in AXES]
    if sample.missing or not (part.boxes or measures):
        return {}
    if part.boxes:
        return with_boxes(sample.guess, part.boxes, sample.headings)
    ignored = _rest(sample.headings, dict(sample.guess.headings))
    return {sample.table: replace(sample.guess, ignored=ignored)}


def _look(desk: Desk, name: str, data: bytes, told: ColumnMapping | None) -> Iterator[Sample]:
    """Look into one file: as it was told, else as what it calls itself, else as what fits best."""
    ending = name.rpartition(".")[2].casefold()
    if ending not in _DELIMITED | _WORKBOOKS:
        return
    if told is not None:
        yield look_into(desk, name, data, like=told)
        return
    stem = heading_key(name.rpartition(".")[0])
    if stem in TABLE_COLUMNS:
        yield look_into(desk, name, data, like=ColumnMapping(stem))
        return
    found = [look_into(desk, name, data, like=ColumnMapping(table)) for table in TABLE_COLUMNS]
    sheets = {heading_key(sheet) for sheet in found[0].sheets}
    named = [one for one in found if one.table in sheets]
    if named:
        yield from named
        return
    yield max(found, key=lambda one: (not one.missing, _tells_of_boxes(one), _known(one)))


def _known(sample: Sample) -> int:
    return len(sample.guess.headings)


def _tells_of_boxes(sample: Sample) -> bool:
    """Tell a list of objects that says where each lies from a bare list of what lies where."""
    packed = TABLE_COLUMNS[PACKINGS].names
    tells_more = any(name not in packed for _, name in sample.guess.headings)
    return sample.table == OBJECTS and tells_more and bool(_find_boxes(sample))


def _describe(sample: Sample, saved: Mappings) -> Part:
    table = sample.table
    mappings = {table: saved.saved[sample.saved]} if sample.saved else {}
    boxes: dict[str, str] = {}
    if table == OBJECTS:
        boxes = _find_boxes(sample)
        fitting = find_fitting(saved, PACKINGS, sample.headings)
        if fitting and mappings:
            mappings[PACKINGS] = saved.saved[fitting]
    return Part(sample.file, sample, boxes, mappings)


def _find_boxes(sample: Sample) -> dict[str, str]:
    """Find the headings that no field of an object is meant by, and one of a packing is."""
    columns = TABLE_COLUMNS[PACKINGS]
    found: dict[str, str] = {}
    for heading in sample.unknown:
        name = columns.find(heading)
        if name in BOX_FIELDS and name not in found.values():
            found[heading] = name
    return found if "container_number" in found.values() else {}


def _is_delimited(name: str) -> bool:
    return name.rpartition(".")[2].casefold() in _DELIMITED
