from __future__ import annotations

from pathlib import Path

from service.records.lido.rows import read_rows
from service.records.rows.notebook import Notebook

EXPORT = Path(__file__).parents[3] / "sample_records" / "lido_export" / "objects.xml"
BARE = (
    b'<lido xmlns="http://www.lido-schema.org"><lidoRecID>R1</lidoRecID>'
    b"<administrativeMetadata><resourceWrap><resourceSet><resourceRepresentation>"
    b"<linkResource>https://x.example/full/0/default.jpg</linkResource>"
    b"</resourceRepresentation></resourceSet></resourceWrap></administrativeMetadata></lido>"
)


def test_row_says_where_each_value_stands() -> None:
    """A row has the columns of the object table, with the record and element each came from."""
    notebook = Notebook()
    first, _second = read_rows([EXPORT.read_bytes()], name="x.xml", notebook=notebook)
    assert first.text("object_number") == "1931.14.40"
    assert first.list_cell("materials").texts() == ("elm", "lignum vitae")
    assert first.headings["title"] == "lido[1]/titleSet"
    assert first.source["photos"] == "1931.14.40.jpg"
    assert "Never read" not in str(first.source)


def test_what_is_said_twice_is_noted_with_its_place() -> None:
    """Findings name the record, the element and the object."""
    notebook = Notebook()
    list(read_rows([EXPORT.read_bytes()], name="x.xml", notebook=notebook))
    places = {
        finding.code: (finding.where.column, finding.where.object_number)
        for finding in notebook.findings()
    }
    assert places == {
        "duplicate-number": ("lido[2]/workID", "1954.3.60"),
        "unreadable-weight": ("lido[2]/objectMeasurementsSet", "1954.3.60"),
    }


def test_number_of_the_record_is_noted() -> None:
    """A number that is not the museum's, and an address that names no file, are told."""
    notebook = Notebook()
    (row,) = read_rows([BARE], name="x.xml", notebook=notebook)
    assert row.text("object_number") == "R1"
    assert "photos" not in row.values
    codes = [finding.code for finding in notebook.findings()]
    assert codes == ["number-like-object-number", "photo-not-named"]
