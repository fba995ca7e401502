"""Writes an object's record as it would be typed, so that reading it again gives the same."""

from __future__ import annotations

from collections.abc import Iterable

from service.records.measures import Measure
from service.records.record import Hazard, ObjectRecord, Part
from service.web.views.shell.weights import write_weight

HAZARD_FIELDS = ("code", "state", "note", "method", "checked_on", "checked_by", "review_on")
"""The fields of a row of hazards, as a document has them; the form puts `hazard_` before each."""


def write_values(record: ObjectRecord) -> dict[str, str]:
    """Write every field but hazards and photos, by the name its column has in a spreadsheet."""
    return {
        "object_number": record.object_number,
        "title": record.title,
        "object_name": record.object_name,
        "period": record.period,
        "number_of_parts": str(record.number_of_parts or ""),
        "parts": "\n".join(map(_write_part, record.parts)),
        "accessories": "\n".join(record.accessories),
        "materials": "; ".join(record.materials),
        "dimensions": record.dimensions_text or _write_measures(record.dimensions),
        "weight": record.weight_text or write_weight(record.weight),
        "condition": record.condition,
        "handling_notes": record.handling_notes,
        "cautions": "; ".join(record.cautions),
        "hang_factors": "; ".join(record.hang_factors),
        "former_numbers": "; ".join(record.former_numbers),
        "catalogue_url": record.catalogue_url,
        "restricted": "yes" if record.restricted else "no",
    }


def write_hazard(hazard: Hazard) -> dict[str, str]:
    """Write a hazard as a row of the form."""
    return {
        "code": hazard.code,
        "state": hazard.state.value,
        "note": hazard.note,
        "method": hazard.method,
        "checked_on": str(hazard.checked_on or ""),
        "checked_by": hazard.checked_by,
        "review_on": str(hazard.review_on or ""),
    }


def _write_part(part: Part) -> str:
    return f"{part.mark}: {part.name}" if part.mark and part.name else part.mark or part.name


def _write_measures(measures: Iterable[Measure]) -> str:
    return " x ".join(f"{one.label} {one.length_mm:g} mm".strip() for one in measures)
