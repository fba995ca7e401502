from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest

from service.cli.at_desk import AtDesk
from service.config import Settings
from service.errors import MissingColumnsError, NotFoundError, UnusableMappingError
from service.keeping.desk import Desk
from service.keeping.intake.reading import look_into, read_mapped
from service.records.mapping.mapping import ColumnMapping
from service.records.measures import Measure
from service.records.record import Collection, Weight
from service.store.kept.mappings import save_mapping
from service.store.open import writing
from tests.records.mapping.made import MAPPING, TABLE
from tests.records.sources.test_workbook import make_workbook
from tests.store.made import STAMP

DATA = TABLE.encode("cp1252")


@pytest.fixture(scope="module")
def desk(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Desk]:
    """Give a desk whose store has two mappings."""
    settings = Settings(data=tmp_path_factory.mktemp("data"), processes=1)
    with AtDesk(settings).desk() as opened:
        with writing(opened.engine) as connection:
            save_mapping(connection, "ours", MAPPING, stamp=STAMP)
            boxes = ColumnMapping("containers", (("Kiste", "container_number"),))
            save_mapping(connection, "boxes", boxes, stamp=STAMP)
        yield opened


def _check(collection: Collection) -> None:
    lead, hat = collection.objects
    assert (lead.object_number, lead.title, lead.materials) == ("1931.14.2", "Lot", ("lead",))
    assert lead.dimensions == (Measure("height", 125.0), Measure("width", 80.0))
    assert (lead.weight, hat.weight) == (Weight(1430.0), None)
    assert lead.source["Höhe"] == "12,5"
    assert collection.said_of_objects["1931.14.2"] >= {"dimensions", "weight", "materials"}
    assert "mapping-used" in {one.code for one in collection.findings}
    assert "unknown-column" not in {one.code for one in collection.findings}


def test_the_same_headings_are_read_by_their_mapping(desk: Desk) -> None:
    """Numbers have their units, what is fixed is there, and the row stays as it came."""
    _check(read_mapped(desk, {"export.csv": DATA}))
    rows = [line.split(";") for line in TABLE.splitlines()]
    _check(read_mapped(desk, {"export.xlsx": make_workbook({"Blatt 1": rows})}))


def test_other_headings_are_read_as_ever(desk: Desk) -> None:
    """The mapping asked for is taken all the same, and what it misses is told."""
    more = DATA.replace(b"Notiz", b"Farbe")
    with pytest.raises(MissingColumnsError):
        read_mapped(desk, {"export.csv": more})
    told = read_mapped(desk, {"export.csv": more.replace(b"Gewicht", b"kg")}, mapping="ours")
    assert [one.message for one in told.findings if one.code == "unknown-column"] == [
        "Columns not used: “kg”, “Farbe”.",
        "There is no heading “Gewicht”, which was to be weight.",
    ]
    assert told.findings[-1].advice.startswith("Correct the heading in the mapping")
    assert read_mapped(desk, {"export.csv": b"number,title\n1,x\n"}).objects[0].title == "x"


def test_a_lone_file_may_hold_containers(desk: Desk) -> None:
    """The mapping asked for says what the rows are; museum.toml goes on counting beside it."""
    files = {"kisten.csv": b"Kiste\nB-1\n", "museum.toml": b'name = "Port Merrow Museum"\n'}
    found = read_mapped(desk, files, mapping="boxes")
    assert [one.container_number for one in found.containers] == ["B-1"]
    assert (found.objects, found.museum.name) == ((), "Port Merrow Museum")


def test_own_headings_of_museum_toml_stay_for_other_tables(desk: Desk) -> None:
    """A mapping takes the place of [columns] for its own table alone."""
    files = {
        "objects.csv": TABLE.encode(),
        "containers.csv": b"Schachtel\nB-2\n",
        "museum.toml": b'[columns.containers]\ncontainer_number = "Schachtel"\n',
    }
    found = read_mapped(desk, files)
    assert (len(found.objects), found.containers[0].container_number) == (2, "B-2")


def test_what_is_no_table_takes_no_mapping(desk: Desk) -> None:
    """Whoever asks for one is told, and so is who asks for one that is not there."""
    with pytest.raises(UnusableMappingError, match="The source is no table"):
        read_mapped(desk, {"all.json": b'{"objects": []}'}, mapping="ours")
    with pytest.raises(NotFoundError):
        read_mapped(desk, {"export.csv": DATA}, mapping="theirs")


def test_a_look_changes_nothing_and_names_the_mapping(desk: Desk) -> None:
    """The same file is looked into as a person says it is written."""
    found = look_into(desk, "export.csv", DATA, like=ColumnMapping())
    assert (found.saved, found.missing) == ("ours", ("object_number",))
    latin = look_into(desk, "export.csv", DATA, like=replace(ColumnMapping(), delimiter=","))
    assert latin.saved == ""
