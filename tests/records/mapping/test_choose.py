from __future__ import annotations

from dataclasses import replace

import pytest

from service.records.mapping.choose import (
    NO_MAPPINGS,
    Mappings,
    choose_for_file,
    choose_for_workbook,
    find_fitting,
    written_as,
)
from service.records.mapping.mapping import ColumnMapping
from service.records.rows.notebook import Notebook
from tests.records.mapping.made import MAPPING, TABLE
from tests.records.sources.test_workbook import make_workbook

OTHER = ColumnMapping(headings=(("No", "object_number"),))
BOXES = ColumnMapping("containers", (("Kiste", "container_number"),), sheet="Kisten")
SAVED = Mappings({"other": OTHER, "ours": MAPPING, "boxes": BOXES})


def _choose(data: bytes, mappings: Mappings, table: str = "objects") -> ColumnMapping | None:
    return choose_for_file(data, name="x.csv", table=table, mappings=mappings, notebook=Notebook())


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_the_same_headings_choose_their_mapping(encoding: str) -> None:
    """In any order and encoding, also below a line that is none."""
    assert _choose(TABLE.encode(encoding), SAVED) == MAPPING
    lines = TABLE.splitlines()
    turned = ";".join(reversed(lines[0].split(";")))
    assert _choose(f"Export 2026\n\n{turned}\n".encode(encoding), SAVED) == MAPPING


def test_another_set_of_headings_chooses_none() -> None:
    """One heading more or fewer may mean another export."""
    more = TABLE.replace("Notiz", "Notiz;Farbe")
    for text in (more, TABLE.replace(";Notiz", ""), "No,Title\n1,x\n"):
        assert _choose(text.encode(), SAVED) is None
    assert _choose(TABLE.encode(), SAVED, "packings") is None
    assert _choose(TABLE.encode(), NO_MAPPINGS) is None


def test_the_mapping_asked_for_is_taken_whatever_the_headings() -> None:
    """It reads its own table alone; the others choose by themselves."""
    notebook = Notebook()
    asked = Mappings(SAVED.saved, "other")
    chosen = choose_for_file(
        TABLE.encode(), name="x.csv", table="objects", mappings=asked, notebook=notebook
    )
    assert chosen == OTHER
    assert [one.message for one in notebook.findings()] == [
        "The objects were read by the mapping “other”."
    ]
    assert _choose(b"Kiste\nB-1\n", asked, "containers") == BOXES


def test_a_mapping_in_another_encoding_does_not_fit() -> None:
    """Bytes that are no such text are no headings."""
    latin = Mappings({"ours": replace(MAPPING, encoding="utf-8")})
    assert _choose(TABLE.encode("cp1252"), latin) is None


def test_sheets_choose_theirs() -> None:
    """A mapping looks at its own sheet, else at that of its table, else at the first."""
    rows = [line.split(";") for line in TABLE.splitlines()]
    data = make_workbook({"Objekte": rows, "Kisten": [["Kiste"], ["B-1"]], "x": [["No"]]})
    chosen = choose_for_workbook(data, name="x.xlsx", mappings=SAVED, notebook=Notebook())
    assert chosen == {"objects": MAPPING, "containers": BOXES}
    none = choose_for_workbook(data, name="x.xlsx", mappings=NO_MAPPINGS, notebook=Notebook())
    assert none == {}


def test_headings_name_their_mapping() -> None:
    """For whoever only looks."""
    assert find_fitting(SAVED, "objects", ["no", ""]) == "other"
    assert find_fitting(SAVED, "objects", ["nobody"]) == ""
    assert written_as(replace(OTHER, delimiter="|")).delimiter == "|"
