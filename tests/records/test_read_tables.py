from __future__ import annotations

import io
from pathlib import Path

import pytest
import xlsxwriter

from service.errors import MissingColumnsError, UnreadableFileError
from service.records.museum.lifting import FilterColumn, LiftingChoices
from service.records.read_tables import read_beside, read_tables, read_workbook
from service.records.record import Collection, Hazard, HazardState, Museum, WeightBasis

SAMPLES = Path(__file__).parents[2] / "sample_records"


def read_folder(folder: Path) -> Collection:
    """Read the tables of a sample folder."""
    return read_tables(
        {path.name: path.read_bytes() for path in folder.iterdir() if path.is_file()}
    )


def codes_of(collection: Collection) -> list[tuple[str, int | None]]:
    """Give code and row of every finding."""
    return [(finding.code, finding.where.row) for finding in collection.findings]


def test_museum_of_the_samples_is_read_whole() -> None:
    """Museum, objects, containers and packings come out, and every place has its object."""
    collection = read_folder(SAMPLES / "port_merrow")
    numbers = {record.object_number for record in collection.objects}
    containers = {record.container_number for record in collection.containers}
    assert collection.museum.name == "Port Merrow Museum"
    assert len(collection.objects) == len(numbers) == 47
    assert {packing.container_number for packing in collection.packings} == containers
    assert len(containers) == 10
    placed = {place.object_number for packing in collection.packings for place in packing.places}
    assert placed < numbers


def test_untidy_export_keeps_its_good_rows() -> None:
    """An office's export in Windows-1252 with semicolons is read, each bad cell named."""
    name = "untidy_export.csv"
    collection = read_tables({name: (SAMPLES / name).read_bytes()})
    records = {record.object_number: record for record in collection.objects}
    assert len(records) == 13
    assert (
        records["PMM.77.12"].title
        == "Café sign, enamelled “Chez l\N{RIGHT SINGLE QUOTATION MARK}Éperlan”"
    )
    assert records["X.131"].title == '=HYPERLINK("label")'
    weight = records["1954.3.20"].weight
    assert weight is not None
    assert (weight.weight_g, weight.basis) == (400.0, WeightBasis.ESTIMATED)
    assert records["X.130"].hazards == (Hazard("toxic-thing", HazardState.PRESUMED),)
    assert codes_of(collection) == [
        ("guessed-encoding", None),
        ("unknown-column", 1),
        ("impossible-measure", 6),
        ("unreadable-dimensions", 7),
        ("unreadable-weight", 7),
        ("duplicate-number", 8),
        ("number-like-object-number", 9),
        ("unknown-hazard", 11),
        ("row-without-number", 14),
        ("unreadable-count", 16),
        ("unreadable-date", 16),
    ]


def test_titles_of_all_scripts_come_through() -> None:
    """No script is changed on the way in."""
    data = (SAMPLES / "scripts.csv").read_bytes()
    collection = read_tables({"objects.csv": data})
    assert collection.findings == ()
    assert all(record.title in data.decode().replace('""', '"') for record in collection.objects)


def test_many_objects_are_read_without_a_finding() -> None:
    """The sample of full boxes is tidy."""
    collection = read_folder(SAMPLES / "many_objects")
    assert collection.findings == ()
    assert max(len(packing.places) for packing in collection.packings) == 300


def test_objects_are_the_only_file_needed() -> None:
    """Without the other files there is a collection of objects alone."""
    collection = read_tables({"objects.csv": b"Object No;Title\n1;Jar\n"})
    assert [record.title for record in collection.objects] == ["Jar"]
    assert (collection.museum, collection.containers, collection.packings) == (Museum(), (), ())


@pytest.mark.parametrize(
    ("files", "error", "words"),
    [
        ({}, UnreadableFileError, "objects.csv"),
        ({"containers.csv": b"container_number\n"}, UnreadableFileError, "objects.csv"),
        ({"a.csv": b"number", "b.csv": b"number"}, UnreadableFileError, "objects.csv"),
        ({"objects.csv": b""}, MissingColumnsError, "object_number"),
        ({"objects.csv": b"title\nJar\n"}, MissingColumnsError, "title"),
        ({"objects.csv": b"%PDF-1.7"}, UnreadableFileError, "PDF"),
        ({"objects.csv": b"number\n1", "museum.toml": b"name = "}, UnreadableFileError, "museum"),
        (
            {"objects.csv": b"number\n1", "museum.toml": b"x=" + b"[" * 9999},
            UnreadableFileError,
            "TOML",
        ),
    ],
    ids=["nothing", "no objects", "two files", "empty", "no number", "pdf", "toml", "deep toml"],
)
def test_files_that_leave_nothing_are_refused(
    files: dict[str, bytes], error: type[Exception], words: str
) -> None:
    """A file that cannot be read as a whole is named with the reason."""
    with pytest.raises(error, match=words):
        read_tables(files)


def test_unknown_choice_of_the_museum_is_noted() -> None:
    """A misspelt key does not pass in silence."""
    toml = (
        b'name = "Port Merrow"\nshow_locations = true\naisle_distance = 1.5\n[questions]\nfax = "1"'
    )
    collection = read_tables({"objects.csv": b"number\n1", "museum.toml": toml})
    assert collection.museum == Museum(name="Port Merrow")
    assert [(finding.code, finding.where.column) for finding in collection.findings] == [
        ("unknown-column", "show_locations"),
        ("wrong-type", "aisle_distance"),
        ("unknown-column", "questions/fax"),
    ]


def test_workbook_reads_as_the_same_tables() -> None:
    """Three sheets give what three files give, and changed numbers are noted."""
    target = io.BytesIO()
    with xlsxwriter.Workbook(target) as book:
        objects = book.add_worksheet("Objects")
        objects.write_row(0, 0, ["Object number", "Title", "Number of parts"])
        objects.write_row(1, 0, ["1954.3", "Jar", 2])
        objects.write_row(2, 0, [1954.10, "Lid", "2"])
        packings = book.add_worksheet("Packings")
        packings.write_row(0, 0, ["Box", "Object", "Layer"])
        packings.write_row(1, 0, ["B-1", "1954.3", 2])
    museum = b'name = "Port Merrow"'
    collection = read_workbook(target.getvalue(), name="x.xlsx", museum=museum)
    assert [(r.object_number, r.number_of_parts) for r in collection.objects] == [
        ("1954.3", 2),
        ("1954.1", 2),
    ]
    assert collection.packings[0].places[0].layer == 2
    assert collection.museum.name == "Port Merrow"
    (finding,) = collection.findings
    assert finding.code == "number-like-object-number"
    assert (finding.where.file, finding.where.row) == ("x.xlsx, sheet Objects", 3)


def test_museum_names_its_headings() -> None:
    """[columns] is for objects, a group within it for another table; slips are noted."""
    toml = """
        [columns]
        title = "Bezeichnung"
        colour = "Farbe"
        weight = 3
        period = "Jahr"
        [columns.packings]
        container_number = "Kiste"
        object_number = "Inv"
        [columns.boxes]
        kind = "Art"
    """
    collection = read_tables(
        {
            "objects.csv": b"number;Bezeichnung;title\n1;Jug;Krug\n",
            "packings.csv": b"Kiste;Inv\nB-1;1\n",
            "museum.toml": toml.encode(),
        }
    )
    assert collection.objects[0].title == "Jug"
    assert collection.packings[0].container_number == "B-1"
    places = [(finding.code, finding.where.column) for finding in collection.findings]
    assert places == [
        ("unknown-column", "columns/boxes"),
        ("unknown-column", "columns/colour"),
        ("wrong-type", "columns/weight"),
        ("unknown-column", ""),
        ("unknown-column", ""),
    ]


def test_headings_that_are_no_group_are_noted() -> None:
    """A slip in the museum's file leaves the usual headings."""
    collection = read_tables({"objects.csv": b"number\n1", "museum.toml": b"columns = 1"})
    assert [finding.code for finding in collection.findings] == ["wrong-type"]
    assert len(collection.objects) == 1


def test_tables_beside_other_objects() -> None:
    """Objects of another kind of file come with the tables and the museum beside them."""
    files = {"containers.csv": b"number\nB-1", "museum.toml": b'name = "Port Merrow"'}
    collection = read_beside(files, lambda _notebook: ())
    assert (collection.objects, collection.packings) == ((), ())
    assert [container.container_number for container in collection.containers] == ["B-1"]
    assert collection.museum.name == "Port Merrow"


def test_dublin_core_sample_is_read() -> None:
    """Headings of a standard lead to our columns, and it is said to which."""
    data = (SAMPLES / "dublin_core.csv").read_bytes()
    collection = read_tables({"dublin_core.csv": data})
    palm, fid = collection.objects
    assert (palm.object_number, palm.object_name) == ("1931.14.41", "tool")
    assert (palm.period, palm.materials) == ("about 1890", ("leather", "iron"))
    assert len(fid.dimensions) == 1
    codes = [finding.code for finding in collection.findings]
    assert codes == ["unknown-column", "headings-recognised"]


def test_lifting_choices_are_a_group_of_the_museum() -> None:
    """What stands under [lifting] is read, and a choice that is not known is an error."""
    toml = b'name = "Port Merrow"\n[lifting]\ncolumn = "higher"\nlimit = "20 kg"\n'
    collection = read_tables({"objects.csv": b"number\n1", "museum.toml": toml})
    lifting = LiftingChoices(column=FilterColumn.HIGHER)
    assert collection.museum == Museum(name="Port Merrow", lifting=lifting)
    (finding,) = collection.findings
    assert (finding.code, finding.where.column) == ("lifting-choice", "lifting/limit")


def test_packing_checks_are_a_group_of_their_own() -> None:
    """What README shows is understood, and a slip in a code is told with its place."""
    museum = b'[packing_checks]\noff = ["overfilled", "over-filled"]'
    collection = read_tables({"objects.csv": b"object_number\n1", "museum.toml": museum})
    assert collection.museum.packing_checks_off == ("overfilled",)
    (finding,) = collection.findings
    assert (finding.code, finding.severity.value) == ("unknown-packing-check", "error")
    assert finding.where.column == "packing_checks/off"
