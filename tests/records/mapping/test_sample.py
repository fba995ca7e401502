from __future__ import annotations

import pytest

from service.errors import UnreadableFileError
from service.records.mapping.choose import Mappings
from service.records.mapping.mapping import ColumnMapping
from service.records.mapping.sample import Sample, read_sample
from tests.records.mapping.made import MAPPING, TABLE
from tests.records.sources.test_workbook import make_workbook

KNOWN = "Accession no,Title,Height (cm),Width (cm),Colour\n" + "1,x,2,3,red\n" * 30


ANY = ColumnMapping()


def _look(data: bytes, name: str = "x.csv", like: ColumnMapping = ANY) -> Sample:
    saved = Mappings({"ours": MAPPING})
    return read_sample(data, name=name, like=like, mappings=saved)


def test_known_headings_are_guessed() -> None:
    """Twenty rows are shown; what is unknown is named, and units in headings are understood."""
    found = _look(KNOWN.encode())
    assert (found.form, found.encoding, found.delimiter) == ("delimited", "utf-8", ",")
    assert found.headings == ("Accession no", "Title", "Height (cm)", "Width (cm)", "Colour")
    assert found.rows == (("1", "x", "2", "3", "red"),) * 20
    assert dict(found.guess.headings) == {
        "Accession no": "object_number",
        "Title": "title",
        "Height (cm)": "height",
        "Width (cm)": "width",
    }
    assert found.guess.units == {"height": "cm", "width": "cm"}
    assert (found.unknown, found.missing, found.saved) == (("Colour",), (), "")


def test_a_foreign_table_says_what_is_missing_and_which_mapping_fits() -> None:
    """Nothing is raised where no heading is known: that is what the look is for."""
    found = _look(TABLE.encode("cp1252"))
    assert (found.encoding, found.delimiter) == ("windows-1252", ";")
    assert found.guess.headings == ()
    assert found.unknown[:2] == ("Inventarnummer", "Benennung")
    assert (found.missing, found.saved) == (("object_number",), "ours")


def test_the_surest_heading_of_a_field_is_guessed() -> None:
    """Our own word stands before others, and dimensions in one column before single measures."""
    found = _look(b"No,Object number,Height,Size\n1,2,3,4\n")
    assert dict(found.guess.headings) == {"Object number": "object_number", "Size": "dimensions"}
    assert found.unknown == ("No", "Height")


def test_what_is_said_of_the_file_counts() -> None:
    """Encoding, delimiter and the kind of table may be chosen by a person."""
    found = _look(
        "Kiste|Nr|Größe\n1|2|3\n".encode("cp850"),
        like=ColumnMapping(encoding="cp850", delimiter="|"),
    )
    assert found.headings == ("Kiste", "Nr", "Größe")
    boxes = _look(b"Box,Shelf\n1,2\n", like=ColumnMapping(table="containers"))
    assert dict(boxes.guess.headings) == {"Box": "container_number", "Shelf": "location"}
    packings = _look(b"Box,Layer\n1,2\n", like=ColumnMapping(table="packings"))
    assert packings.missing == ("object_number",)


def test_a_workbook_names_its_sheets() -> None:
    """The one asked for is looked into, else that of the table, else the first."""
    data = make_workbook({"Eins": [["No"], ["1"]], "Zwei": [["Farbe"], ["rot"]]})
    found = _look(data, "x.xlsx")
    assert (found.form, found.sheet, found.sheets) == ("workbook", "Eins", ("Eins", "Zwei"))
    assert found.guess.sheet == "Eins"
    assert _look(data, "x.xlsx", like=ColumnMapping(sheet="Zwei")).headings == ("Farbe",)
    with pytest.raises(UnreadableFileError, match="it has no sheet 'Drei', only Eins, Zwei"):
        _look(data, "x.xlsx", like=ColumnMapping(sheet="Drei"))


def test_documents_say_themselves_what_they_hold() -> None:
    """No mapping is needed for these, and an empty file has no headings."""
    assert _look(b"{}", "x.json").form == "described"
    assert _look(b"").headings == ()
