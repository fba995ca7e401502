"""Reads the rows of hazards: a recorded one stays until somebody says that it is not there."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from service.keeping.checks.gone_hazards import GoneHazard
from service.languages.saying import say
from service.records.cells.hazards import read_hazards
from service.records.record import Hazard
from service.records.rows.notebook import Notebook
from service.records.sources.columns import OBJECT_COLUMNS
from service.records.sources.entries import make_row
from service.web.views.shell.typed import tell_faults

Row = Mapping[str, str]


@dataclass(frozen=True, slots=True)
class TypedHazards:
    """The rows as they were typed, what they say, what is said to be gone, and the faults.

    A fault stands under `hazard-` and the number of its row, counted from 0.
    """

    rows: tuple[Row, ...]
    hazards: tuple[Hazard, ...]
    gone: tuple[GoneHazard, ...]
    faults: Mapping[str, str]


def read_hazard_rows(
    rows: Sequence[Row], gone: frozenset[int], recorded: Sequence[Hazard]
) -> TypedHazards:
    """Read the rows; the first ones are those of the recorded hazards, in their order.

    `gone` numbers the rows that are said to be checked and not there: each needs a note and the
    day. What a row does not show of a recorded hazard, its instruction, stays.
    """
    kept: list[Hazard] = []
    left: list[GoneHazard] = []
    faults: dict[str, str] = {}
    for at, row in enumerate(rows):
        was = recorded[at] if at < len(recorded) else None
        if was is None and not row.get("code"):
            continue
        code = was.code if was else row["code"]
        read, fault = _read_row({**row, "code": code})
        if was is not None and at in gone:
            fault = fault or _ask_reason(read)
            left += [GoneHazard(was, read.note, read.checked_on)] if read else []
        elif read is not None:
            kept.append(replace(read, instruction=was.instruction) if was else read)
        if fault:
            faults[f"hazard-{at}"] = fault
    kept += recorded[len(rows) :]
    return TypedHazards(tuple(rows), tuple(kept), tuple(left), faults)


def _read_row(row: Row) -> tuple[Hazard | None, str]:
    """Read one row with the readers of documents."""
    notebook = Notebook()
    entry = {"hazards": [dict(row)]}
    cell = make_row(entry, OBJECT_COLUMNS, name="", pointer="", notebook=notebook)
    found = read_hazards(cell.list_cell("hazards"))
    # A hazard in the museum's own words is printed as it is written.
    codes = {finding.code for finding in notebook.findings()}
    fault = "" if codes == {"unknown-hazard"} else tell_faults(notebook).get("hazards", "")
    return (found[0] if found else None), fault


def _ask_reason(read: Hazard | None) -> str:
    if read is None or not read.note or read.checked_on is None:
        return say("To take it away, say in the note what was found, and the day it was checked.")
    return ""
