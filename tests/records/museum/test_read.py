from __future__ import annotations

from collections.abc import Callable

from service.findings import Where
from service.records.museum.language import Language
from service.records.museum.lifting import USUAL_LIFTING, FilterColumn, LiftingChoices
from service.records.museum.read import read_museum, read_own_headings
from service.records.museum.region import Region
from service.records.record import Museum, Questions
from service.records.rows.notebook import Notebook
from service.records.rows.row import Row
from service.records.sources.columns import OBJECT_COLUMNS

MakeRow = Callable[..., Row]


def test_choices_are_read(make_row: MakeRow) -> None:
    """Every key comes to its field."""
    row = make_row(
        name="Port Merrow Museum",
        short_name="Port Merrow",
        object_address="https://collections.portmerrow.example/o/{object_number}",
        container_address="https://collections.portmerrow.example/c/{container_number}",
        upper_case_addresses="yes",
        show_location="yes",
        aisle_distance="1.2 m",
        questions_role="Collections desk",
        questions_phone="555 0142",
        region="UK",
        presume_hazards="no",
        second_language="cy",
        scan_shows_contents="yes",
        scan_shows_location="yes",
    )
    lifting = LiftingChoices(column=FilterColumn.HIGHER)
    assert read_museum(row, lifting) == Museum(
        name="Port Merrow Museum",
        short_name="Port Merrow",
        object_address="https://collections.portmerrow.example/o/{object_number}",
        container_address="https://collections.portmerrow.example/c/{container_number}",
        upper_case_addresses=True,
        show_location=True,
        aisle_distance_mm=1200.0,
        questions=Questions("Collections desk", "555 0142"),
        lifting=lifting,
        region=Region.UK,
        presume_hazards=False,
        second_language=Language.WELSH,
        scan_shows_contents=True,
        scan_shows_location=True,
    )


def test_what_is_not_said_is_usual(make_row: MakeRow) -> None:
    """A museum that says nothing, or nothing readable, hides locations and presumes hazards."""
    assert read_museum(make_row(), USUAL_LIFTING) == Museum()
    unclear = make_row(
        show_location="perhaps",
        aisle_distance="far",
        region="Atlantis",
        presume_hazards="perhaps",
        second_language="Norn",
        scan_shows_contents="perhaps",
        scan_shows_location="perhaps",
    )
    assert read_museum(unclear, USUAL_LIFTING) == Museum()


def test_one_heading_for_one_column() -> None:
    """A heading given to two columns is kept for the first and noted for the second."""
    notebook = Notebook()
    columns = read_own_headings(
        {"title": "Name", "object_name": "Name"},
        OBJECT_COLUMNS,
        where=Where(file="museum.toml", column="columns"),
        notebook=notebook,
    )
    assert columns.own == {"title": "Name"}
    (finding,) = notebook.findings()
    assert (finding.code, finding.where.column) == ("wrong-type", "columns/object_name")


def test_packing_checks_are_turned_off_by_code(make_row: MakeRow) -> None:
    """A code that is not in the list is an error, and turns nothing off."""
    row = make_row(packing_checks_off="overfilled; Covered lid; over-filled")
    assert read_museum(row, USUAL_LIFTING).packing_checks_off == ("overfilled", "covered-lid")
    (finding,) = row.notebook.findings()
    assert (finding.code, finding.severity.value) == ("unknown-packing-check", "error")
    assert "over-filled" in finding.message
