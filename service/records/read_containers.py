"""Rows to container records."""

from __future__ import annotations

from collections.abc import Iterable

from service.records.cells.dates import read_date
from service.records.cells.dimensions import read_dimensions
from service.records.cells.lengths import read_length_mm, read_size
from service.records.cells.weights import read_weight
from service.records.cells.words import read_choice, read_grid, read_kind, read_stacking_limit
from service.records.museum.read import read_questions
from service.records.record import ContainerRecord, Lid
from service.records.rows.numbering import unique_rows
from service.records.rows.row import Row
from service.records.rows.said import SaidColumns


def read_containers(
    rows: Iterable[Row], said: SaidColumns | None = None
) -> tuple[ContainerRecord, ...]:
    """Read every container that has a number of its own, in the order of the rows.

    `said` is told which columns each of them has.
    """
    numbered = unique_rows(rows, "container_number", said)
    return tuple(_read_container(row.about(container_number=number)) for number, row in numbered)


def _read_container(row: Row) -> ContainerRecord:
    return ContainerRecord(
        container_number=row.where.container_number,
        kind=read_kind(row.cell("kind")),
        title=row.text("title"),
        location=row.list_cell("location").texts(separator="/"),
        lid=read_choice(row.cell("lid"), Lid, default=Lid.OPAQUE, finding="unknown-lid"),
        lid_size=read_size(row.cell("lid_size")),
        end_size=read_size(row.cell("end_size")),
        inner_dimensions=read_dimensions(row.cell("inner_size")),
        compartments=read_grid(row.cell("compartments")),
        tare=read_weight(row.cell("tare_weight")),
        gross=read_weight(row.cell("gross_weight")),
        packing_materials=row.list_cell("packing_materials").texts(),
        hand_height_mm=read_length_mm(row.cell("hand_height")),
        inside=row.cell("inside").value,
        stacking_limit=read_stacking_limit(row.cell("stacking_limit")),
        weight_limit_g=_read_limit_g(row),
        heavy_end=row.text("heavy_end"),
        temporary_until=read_date(row.cell("temporary_until")),
        questions=read_questions(row),
        handling_notes=row.text("handling_notes"),
        source=row.source,
    )


def _read_limit_g(row: Row) -> float | None:
    limit = read_weight(row.cell("weight_limit"))
    return None if limit is None else limit.weight_g
