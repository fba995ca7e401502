"""The museum's own choices, from a TOML file or a JSON object."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from service.findings import Where
from service.records.cells.lengths import read_length_mm
from service.records.cells.words import read_choice, read_codes, read_yes_or_no
from service.records.codes import PACKING_CHECK_CODES
from service.records.museum.check_months import read_check_months
from service.records.museum.hazard_words import HazardWords
from service.records.museum.language import Language
from service.records.museum.lifting import LiftingChoices
from service.records.museum.region import Region
from service.records.record import Museum, Questions
from service.records.rows.cell import Cell
from service.records.rows.notebook import Notebook
from service.records.rows.row import Row
from service.records.rows.text import quote_text
from service.records.sources.columns import Columns
from service.sentence import Sentence


def read_museum(
    row: Row, lifting: LiftingChoices, hazard_words: tuple[HazardWords, ...] = ()
) -> Museum:
    """Read the museum's choices; what is not given keeps its usual value.

    `lifting` has been read from its own group.
    """
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
        lifting=lifting,
        hazard_words=hazard_words,
        region=read_choice(
            row.cell("region"), Region, default=usual.region, finding="unknown-region"
        ),
        # Where the cell cannot be read, warning too much is the smaller mistake.
        presume_hazards=read_yes_or_no(
            row.cell("presume_hazards"), empty=usual.presume_hazards, unclear=True
        ),
        second_language=read_choice(
            row.cell("second_language"),
            Language,
            default=usual.second_language,
            finding="unknown-language",
        ),
        checks=read_check_months(row),
        packing_checks_off=_read_checks_off(row),
        scan_shows_contents=_read_opened(row.cell("scan_shows_contents")),
        scan_shows_location=_read_opened(row.cell("scan_shows_location")),
    )


def _read_opened(cell: Cell) -> bool:
    """Read whether something is told to anybody; where that is unclear it is not."""
    return read_yes_or_no(cell, empty=False, unclear=False)


def _read_checks_off(row: Row) -> tuple[str, ...]:
    """Read the checks that are turned off; a code that is not in the list turns nothing off."""
    named = read_codes(
        row.list_cell("packing_checks_off"), PACKING_CHECK_CODES, finding="unknown-packing-check"
    )
    return tuple(code for code in named if code in PACKING_CHECK_CODES)


def read_questions(row: Row) -> Questions:
    """Read whom to ask."""
    return Questions(
        role=row.text("questions_role"),
        phone=row.text("questions_phone"),
        person=row.text("questions_person"),
    )


def read_own_headings(
    choices: Mapping[str, object], columns: Columns, *, where: Where, notebook: Notebook
) -> Columns:
    """Give a table's columns with the headings that the museum says it uses for them."""
    own: dict[str, str] = {}
    for column, heading in choices.items():
        place = replace(where, column=f"{where.column}/{column}")
        if column not in columns.names:
            notebook.note("unknown-column", place, Sentence("The column is not known."))
        elif not isinstance(heading, str):
            notebook.note("wrong-type", place, Sentence("A heading should stand here, in quotes."))
        elif heading in own.values():
            message = Sentence(
                "{heading} stands for another column already.", heading=quote_text(heading)
            )
            notebook.note("wrong-type", place, message)
        else:
            own[column] = heading
    return replace(columns, own=own)
