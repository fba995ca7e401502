"""Writes a container's record as it would be typed, so that reading it again gives the same."""

from __future__ import annotations

from collections.abc import Iterable

from service.geometry import Size
from service.records.measures import Measure
from service.records.record import ContainerRecord, Weight
from service.web.views.shell.weights import write_weight


def write_values(record: ContainerRecord) -> dict[str, str]:
    """Write every field of a record, by the name its column has in a spreadsheet."""
    grid, limit = record.compartments, record.weight_limit_g
    return {
        "container_number": record.container_number,
        "kind": record.kind.value,
        "title": record.title,
        "location": " / ".join(record.location),
        "lid": record.lid.value,
        "lid_size": _write_size(record.lid_size),
        "end_size": _write_size(record.end_size),
        "inner_size": _write_measures(record.inner_dimensions),
        "compartments": f"{grid.columns} x {grid.rows}" if grid else "",
        "tare_weight": write_weight(record.tare),
        "gross_weight": write_weight(record.gross),
        "packing_materials": "; ".join(record.packing_materials),
        "hand_height": _write_mm(record.hand_height_mm),
        "inside": record.inside,
        "stacking_limit": "" if record.stacking_limit is None else str(record.stacking_limit),
        "weight_limit": "" if limit is None else write_weight(Weight(limit)),
        "heavy_end": record.heavy_end,
        "temporary_until": str(record.temporary_until or ""),
        "questions_role": record.questions.role,
        "questions_phone": record.questions.phone,
        "questions_person": record.questions.person,
        "handling_notes": record.handling_notes,
    }


def _write_size(size: Size | None) -> str:
    return "" if size is None else f"{size.width_mm:g} x {size.height_mm:g} mm"


def _write_mm(length_mm: float | None) -> str:
    return "" if length_mm is None else f"{length_mm:g} mm"


def _write_measures(measures: Iterable[Measure]) -> str:
    return " x ".join(f"{one.label} {one.length_mm:g} mm".strip() for one in measures)
