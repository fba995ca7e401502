"""The form that says what the headings of each table mean, and the mappings it makes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from service.keeping.intake.how_read import PACKINGS, HowRead
from service.keeping.intake.parts import BOX_FIELDS, Part, choose_how, with_boxes
from service.languages.saying import say
from service.records.mapping.check import check_mapping
from service.records.mapping.mapping import (
    LENGTH_UNITS,
    MASS_UNITS,
    OBJECTS,
    ColumnMapping,
    fields_of,
    units_of,
)
from service.web.views.shell.forms import FilledForm

_BOX = "box:"
"""Marks a field that says where an object lies, in a table of objects."""
MOST_FIXED = 2
_SAMPLES = 3


@dataclass(frozen=True, slots=True)
class HeadingRow:
    """A heading, the name of its field in the form, some of its cells, and what it is taken for."""

    name: str
    heading: str
    cells: tuple[str, ...]
    chosen: str
    unit: str
    is_unsure: bool

    @property
    def measures(self) -> tuple[str, ...]:
        """Give the units that its bare numbers may be in; all where nothing is known of it yet."""
        every = (*LENGTH_UNITS, *MASS_UNITS) if self.is_unsure and not self.chosen else ()
        return units_of(self.chosen) or every


@dataclass(frozen=True, slots=True)
class LookPart:
    """A table as the form shows it; `key` begins the names of its fields."""

    key: str
    part: Part
    rows: tuple[HeadingRow, ...]
    decimal_comma: bool
    fixed: tuple[tuple[str, str], ...]

    @property
    def options(self) -> tuple[str, ...]:
        """Every field that a heading of it may fill."""
        table = self.part.sample.table
        boxes = tuple(f"{_BOX}{name}" for name in BOX_FIELDS) if table == OBJECTS else ()
        return (*fields_of(table), *boxes)

    @property
    def part_fields(self) -> tuple[str, ...]:
        """Every field of its rows, without those that say where an object lies."""
        return fields_of(self.part.sample.table)


def show_parts(parts: tuple[Part, ...], form: FilledForm) -> tuple[LookPart, ...]:
    """Show each table as it was filled in, else as its saved mapping says, else as it seems."""
    return tuple(_show(f"t{at}", part, form) for at, part in enumerate(parts))


def read_look(parts: tuple[Part, ...], values: Mapping[str, str]) -> tuple[HowRead, dict[str, str]]:
    """Read the form: how everything is read, and the faults by the names of fields."""
    how = replace(choose_how(parts), mappings={}, boxes_made=False, named="")
    faults: dict[str, str] = {}
    for at, part in enumerate(parts):
        key = f"t{at}"
        mapping, boxes = _read(key, part, values)
        made = {mapping.table: mapping}
        if "container_number" in boxes.values():
            made = with_boxes(mapping, boxes, part.sample.headings)
        faults.update(_check(key, part, made[mapping.table]))
        if boxes and PACKINGS not in made:
            faults[key] = say("Say which heading names the box, besides the layer or compartment.")
        how = replace(
            how,
            mappings={**how.mappings, **made},
            boxes_made=how.boxes_made or (mapping.table == OBJECTS and PACKINGS in made),
        )
    return how, faults


def _show(key: str, part: Part, form: FilledForm) -> LookPart:
    sample = part.sample
    mapping = part.mappings.get(sample.table, sample.guess)
    chosen = dict(mapping.headings)
    if PACKINGS in part.mappings and sample.table == OBJECTS:
        boxes = dict(part.mappings[PACKINGS].headings)
        chosen |= {one: f"{_BOX}{name}" for one, name in boxes.items() if name in BOX_FIELDS}
    elif not part.mappings:
        chosen |= {heading: f"{_BOX}{name}" for heading, name in part.boxes.items()}
    rows = tuple(
        _row(f"{key}h{index}", index, part, (chosen.get(heading, ""), mapping), form)
        for index, heading in enumerate(sample.headings)
        if heading
    )
    fixed = (*mapping.fixed.items(), *[("", "")] * MOST_FIXED)[:MOST_FIXED]
    said = tuple(
        (form.value(f"{key}f{n}", name), form.value(f"{key}v{n}", value))
        for n, (name, value) in enumerate(fixed)
    )
    comma = form.value(f"{key}comma") == "yes" if form.values else mapping.decimal_comma
    # What has to be said comes first.
    asked_first = tuple(sorted(rows, key=lambda row: not row.is_unsure))
    return LookPart(key, part, asked_first, comma, said)


def _row(
    name: str, index: int, part: Part, seems: tuple[str, ColumnMapping], form: FilledForm
) -> HeadingRow:
    chosen, mapping = seems
    heading = part.sample.headings[index]
    column = (row[index].strip() for row in part.sample.rows if index < len(row))
    cells = tuple(dict.fromkeys(cell for cell in column if cell))[:_SAMPLES]
    is_unsure = heading in part.unsure and not part.mappings
    unit = form.value(f"{name}u", mapping.units.get(chosen, ""))
    return HeadingRow(name, heading, cells, form.value(name, chosen), unit, is_unsure)


def _read(key: str, part: Part, values: Mapping[str, str]) -> tuple[ColumnMapping, dict[str, str]]:
    """Read the mapping of one table, and which headings say where its objects lie."""
    sample = part.sample
    headings, boxes, units = list[tuple[str, str]](), dict[str, str](), dict[str, str]()
    for index, heading in enumerate(sample.headings):
        chosen, unit = values.get(f"{key}h{index}", ""), values.get(f"{key}h{index}u", "")
        if heading and chosen.startswith(_BOX) and sample.table == OBJECTS:
            boxes[heading] = chosen.removeprefix(_BOX)
        elif heading and chosen:
            headings.append((heading, chosen))
            if unit in units_of(chosen):
                units[chosen] = unit
    used = {heading for heading, _ in headings}
    ignored = (one for one in sample.headings if one and one not in used)
    mapping = ColumnMapping(
        sample.table,
        tuple(headings),
        ignored=tuple(dict.fromkeys(ignored)),
        fixed=dict(_fixed(key, values)),
        units=units,
        encoding=_known_encoding(values.get("encoding", "")),
        delimiter=values.get("delimiter", ""),
        sheet=sample.sheet,
        decimal_comma=values.get(f"{key}comma") == "yes",
    )
    return mapping, boxes


def _fixed(key: str, values: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    for n in range(MOST_FIXED):
        name, value = values.get(f"{key}f{n}", ""), values.get(f"{key}v{n}", "").strip()
        if name and value:
            yield name, value


def _known_encoding(name: str) -> str:
    return name.casefold()


def _check(key: str, part: Part, mapping: ColumnMapping) -> Iterator[tuple[str, str]]:
    """Put each fault beside the heading that it names, else beside the table."""
    names = {heading: f"{key}h{at}" for at, heading in enumerate(part.sample.headings) if heading}
    for one in check_mapping(mapping):
        said = sorted((each for each in names if f"“{each}”" in one.message), key=len)
        yield (names[said[-1]] if said else key), one.message
