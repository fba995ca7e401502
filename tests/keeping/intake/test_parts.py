"""Tests for the tables in what was sent."""

from __future__ import annotations

from service.keeping.desk import Desk
from service.keeping.intake.parts import choose_how, find_parts, with_boxes
from service.records.mapping.mapping import ColumnMapping
from service.store.kept.mappings import save_mapping
from service.store.open import writing
from tests.keeping.intake.sent import WITH_BOXES, keep
from tests.records.sources.test_workbook import make_workbook
from tests.store.made import STAMP


def test_a_table_is_what_its_headings_say(desk: Desk) -> None:
    """Whatever its name; one that calls itself a table is that."""
    kept = keep(
        desk,
        stuff__csv=b"Object no,Title,Material\nT.1,Lead,lead\n",
        shelves__csv=b"Box no,Location,Tare\nN-1,Bay 4,1 kg\n",
        packings__csv=b"Box no,Object no\nN-1,T.1\n",
    )
    parts = find_parts(desk, kept)
    tables = {part.file: part.sample.table for part in parts}
    assert tables == {
        "stuff.csv": "objects",
        "shelves.csv": "containers",
        "packings.csv": "packings",
    }
    assert all(part.is_clear for part in parts)
    assert choose_how(parts).tables["containers"] == "shelves.csv"
    assert not choose_how(parts).mappings


def test_a_workbook_has_a_table_in_each_sheet_that_is_called_so(desk: Desk) -> None:
    """Else its first sheet is one."""
    rows = [["object_number", "title"], ["T.1", "Lead"]]
    places = [["container_number", "object_number"], ["N-1", "T.1"]]
    book = make_workbook({"objects": rows, "packings": places})
    found = find_parts(desk, keep(desk, all__xlsx=book))
    assert [part.sample.table for part in found] == ["objects", "packings"]
    (one,) = find_parts(desk, keep(desk, all__xlsx=make_workbook({"Sheet1": rows})))
    assert one.sample.table == "objects"


def test_a_column_of_boxes_is_found(desk: Desk) -> None:
    """It is read as packings beside the objects, by mappings made for the same headings."""
    parts = find_parts(desk, keep(desk, list__csv=WITH_BOXES))
    assert parts[0].boxes == {"Box": "container_number", "Tray": "layer"}
    assert parts[0].is_clear
    how = choose_how(parts)
    assert how.boxes_made
    assert how.mappings["objects"].heading_set == how.mappings["packings"].heading_set


def test_a_heading_nobody_knows_is_asked_about(desk: Desk) -> None:
    """So is a table without a column of numbers; single measures are mapped at once."""
    (part,) = find_parts(desk, keep(desk, a__csv=b"object_number,Shelf list\nT.1,x\n"))
    assert (part.unsure, part.is_clear) == (("Shelf list",), False)
    (part,) = find_parts(desk, keep(desk, a__csv=b"Title,Material\nLead,lead\n"))
    assert not part.is_clear
    parts = find_parts(desk, keep(desk, a__csv=b"object_number,Height (cm)\nT.1,4\n"))
    assert choose_how(parts).mappings["objects"].units == {"height": "cm"}


def test_a_saved_mapping_is_taken_by_itself(desk: Desk) -> None:
    """Nothing has to be asked where the headings are those it was made for."""
    mappings = with_boxes(
        ColumnMapping(headings=(("Nr", "object_number"),)),
        {"Kiste": "container_number"},
        ("Nr", "Kiste"),
    )
    with writing(desk.engine) as connection:
        for name, mapping in (
            ("ours", mappings["objects"]),
            ("ours packings", mappings["packings"]),
        ):
            save_mapping(connection, name, mapping, stamp=STAMP)
    parts = find_parts(desk, keep(desk, a__csv=b"Nr,Kiste\nT.1,N-1\n"))
    assert parts[0].is_clear
    how = choose_how(parts)
    assert (how.named, how.boxes_made) == ("ours", True)
