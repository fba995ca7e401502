"""What a record says beyond LIDO's elements, written in words as a cell of a table would be."""

from __future__ import annotations

from service.records.record import Hazard, ObjectRecord, Part


def list_notes(record: ObjectRecord) -> dict[str, tuple[str, ...]]:
    """Give the notes of a record by column; columns without any are left out."""
    notes = {
        "condition": (record.condition,),
        "handling_notes": (record.handling_notes,),
        "hazards": tuple(write_hazard(hazard) for hazard in record.hazards),
        "cautions": record.cautions,
        "hang_factors": record.hang_factors,
        "parts": tuple(_write_part(part) for part in record.parts),
        "accessories": record.accessories,
    }
    return {column: texts for column, texts in notes.items() if any(texts)}


def write_hazard(hazard: Hazard) -> str:
    """Write a hazard as it stands in a cell, the remark first."""
    pieces = (
        hazard.state.value,
        hazard.note,
        f"method {hazard.method}" if hazard.method else "",
        f"on {hazard.checked_on}" if hazard.checked_on else "",
        f"by {hazard.checked_by}" if hazard.checked_by else "",
        f"review {hazard.review_on}" if hazard.review_on else "",
    )
    return f"{hazard.code}: {', '.join(piece for piece in pieces if piece)}"


def _write_part(part: Part) -> str:
    if not part.mark:
        return part.name
    return f"{part.mark}: {part.name}" if part.name else part.mark
