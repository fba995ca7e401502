"""The museum's own choices, from a TOML file or a JSON object."""

from __future__ import annotations

from service.records.cells.lengths import read_length_mm
from service.records.cells.words import read_yes_or_no
from service.records.record import Museum, Questions
from service.records.rows.row import Row


def read_museum(row: Row) -> Museum:
    """Read the museum's choices; what is not given keeps its usual value."""
    usual = Museum()
    return Museum(
        name=row.text("name"),
        short_name=row.text("short_name"),
        object_address=row.text("object_address"),
        container_address=row.text("container_address"),
        upper_case_addresses=read_yes_or_no(
            row.cell("upper_case_addresses"), empty=usual.upper_case_addresses, unclear=False
        ),
        # Where the cell cannot be read, hiding too much is the smaller mistake.
        show_location=read_yes_or_no(
            row.cell("show_location"), empty=usual.show_location, unclear=False
        ),
        aisle_distance_mm=read_length_mm(row.cell("aisle_distance")) or usual.aisle_distance_mm,
        questions=read_questions(row),
    )


def read_questions(row: Row) -> Questions:
    """Read whom to ask."""
    return Questions(
        role=row.text("questions_role"),
        phone=row.text("questions_phone"),
        person=row.text("questions_person"),
    )
