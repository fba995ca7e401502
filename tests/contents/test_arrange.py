from __future__ import annotations

import pytest

from service.contents.arrange import Arrangement, find_cell
from service.records.measures import Grid
from service.records.record import ContainerRecord, PackingRecord, PlaceRecord
from tests.contents.made import arrange, objects

BOX_1 = ContainerRecord("B-1")
BOX_2 = ContainerRecord("B-2")
BOX_10 = ContainerRecord("B-10")


def packed(container: str, *places: PlaceRecord, revision: int = 1) -> PackingRecord:
    """Make a packing record."""
    return PackingRecord(container, revision, places)


def codes(made: Arrangement) -> list[tuple[str, str, str]]:
    """Give what was found: code, container, object."""
    return [
        (one.code, one.where.container_number, one.where.object_number) for one in made.findings
    ]


def test_containers_come_in_natural_order() -> None:
    """B-2 stands before B-10, and a container nobody packed is there and reported empty."""
    made = arrange([BOX_10, BOX_2, BOX_1], [packed("B-2", PlaceRecord("1987.412.1"))], objects(1))
    numbers = [one.container.container_number for one in made.packings]
    assert numbers == ["B-1", "B-2", "B-10"]
    assert codes(made) == [("empty-container", "B-10", ""), ("empty-container", "B-1", "")]


def test_the_highest_revision_counts() -> None:
    """Of several packings the latest is used, in whatever order they come."""
    rows = [
        packed("B-1", PlaceRecord("1987.412.1"), revision=2),
        packed("B-1", PlaceRecord("1987.412.2"), revision=10),
        packed("B-1", PlaceRecord("1987.412.3"), revision=9),
    ]
    (made,) = arrange([BOX_1], rows, objects(3)).packings
    assert (made.revision, made.contents[0].record.object_number) == (10, "1987.412.2")


def test_an_unknown_container_is_left_out_and_reported() -> None:
    """A packing of a container that is not in the records prints nothing."""
    made = arrange([BOX_1], [packed("B-9", PlaceRecord("1987.412.1"))], objects(1))
    assert ("unknown-container", "B-9", "") in codes(made)
    assert [one.container.container_number for one in made.packings] == ["B-1"]


def test_an_unknown_object_stays_with_its_number_alone() -> None:
    """The box holds something, so its number prints, and a finding says what is missing."""
    made = arrange([BOX_1], [packed("B-1", PlaceRecord("X 7"))])
    (item,) = made.packings[0].contents
    assert (item.record.object_number, item.record.title, item.known) == ("X 7", "", False)
    assert codes(made) == [("unknown-object", "B-1", "X 7")]


def test_an_object_in_two_places_is_reported_and_stands_in_both() -> None:
    """Nobody can know which packing is right, so each card names the other place."""
    place = PlaceRecord("1987.412.1")
    made = arrange([BOX_1, BOX_2], [packed("B-1", place), packed("B-2", place)], objects(1))
    assert codes(made) == [("object-in-two-places", "B-2", "1987.412.1")]
    assert "(the object) is packed in B-1 and in B-2" in made.findings[0].message
    assert [one.contents[0].elsewhere for one in made.packings] == [(((), "B-2"),), (((), "B-1"),)]


@pytest.mark.parametrize(
    ("first", "second", "clash"),
    [
        (("a",), ("b",), ""),
        (("a", "b"), ("b", "c"), "(b)"),
        (("a",), (), "(the object)"),
    ],
    ids=["two parts", "one part twice", "a part and the whole"],
)
def test_parts_may_lie_apart(first: tuple[str, ...], second: tuple[str, ...], clash: str) -> None:
    """Parts of one object lie where they lie; the same part in two places is reported."""
    rows = [
        packed("B-1", PlaceRecord("1987.412.1", first)),
        packed("B-2", PlaceRecord("1987.412.1", second)),
    ]
    made = arrange([BOX_1, BOX_2], rows, objects(1))
    assert [clash in one.message for one in made.findings] == ([True] if clash else [])
    assert made.packings[0].contents[0].elsewhere == ((second, "B-2"),)
    assert made.packings[1].contents[0].elsewhere == ((first, "B-1"),)


def test_a_layer_runs_by_compartment_then_as_listed() -> None:
    """Compartments sort as a person would; what has none comes last, as it was listed."""
    spots = ["", "B10", "B2", "A1", ""]
    places = [PlaceRecord(f"1987.412.{n}", compartment=spot) for n, spot in enumerate(spots, 1)]
    (made,) = arrange([BOX_1], [packed("B-1", *places)], objects(5)).packings
    numbers = [item.record.object_number for item in made.contents]
    assert numbers == [f"1987.412.{n}" for n in (4, 3, 2, 1, 5)]


@pytest.mark.parametrize(
    ("spot", "fits"), [("A1", True), ("B3", True), ("C1", False), ("A4", False)]
)
def test_a_compartment_lies_in_its_grid(spot: str, *, fits: bool) -> None:
    """Three columns and two rows have compartments A1 to B3."""
    box = ContainerRecord("B-1", compartments=Grid(3, 2))
    made = arrange([box], [packed("B-1", PlaceRecord("1987.412.1", compartment=spot))], objects(1))
    expected = [] if fits else [("compartment-outside-grid", "B-1", "1987.412.1")]
    assert codes(made) == expected


@pytest.mark.parametrize(
    ("compartment", "cell"),
    [
        ("A1", (0, 0)),
        ("b3", (2, 1)),
        ("Z12", (11, 25)),
        ("", None),
        ("left", None),
        ("3B", None),
        ("A0", None),
        ("A", None),
        ("A²", None),
        ("A٣", None),
    ],
)
def test_reading_a_compartment(compartment: str, cell: tuple[int, int] | None) -> None:
    """Rows are lettered, columns numbered from 1; any other name is no cell."""
    assert find_cell(compartment) == cell


def test_containers_lie_in_containers() -> None:
    """A tray in a box in a crate is in both, in natural order, and prints on its own too."""
    crate = ContainerRecord("C-1")
    box = ContainerRecord("B-1", inside="C-1")
    trays = [ContainerRecord(f"T-{n}", inside="B-1") for n in (10, 2)]
    rows = [packed("T-2", PlaceRecord("1987.412.1")), packed("T-10", PlaceRecord("1987.412.2"))]
    made = arrange([crate, box, *trays], rows, objects(2))
    by_number = {one.container.container_number: one for one in made.packings}
    inner = by_number["C-1"].nested[0].nested
    assert [one.container.container_number for one in inner] == ["T-2", "T-10"]
    assert len(by_number["C-1"].everything) == len(by_number["B-1"].everything) == 2
    assert codes(made) == []


def test_a_circle_is_cut_and_reported() -> None:
    """Two containers that lie in each other print side by side, each with a finding."""
    made = arrange([ContainerRecord("B-1", inside="B-2"), ContainerRecord("B-2", inside="B-1")])
    found = [code for code in codes(made) if code[0] == "nested-in-itself"]
    assert found == [("nested-in-itself", "B-1", ""), ("nested-in-itself", "B-2", "")]
    assert all(not one.nested for one in made.packings)


def test_a_container_in_itself_is_reported() -> None:
    """The shortest circle is a circle too."""
    made = arrange([ContainerRecord("B-1", inside="B-1")])
    assert ("nested-in-itself", "B-1", "") in codes(made)


def test_what_hangs_on_a_circle_keeps_its_place() -> None:
    """A tray in a box of the circle lies in that box, and is not reported."""
    circle = [ContainerRecord("B-1", inside="B-2"), ContainerRecord("B-2", inside="B-1")]
    tray = ContainerRecord("T-1", inside="B-1")
    made = arrange([*circle, tray], [packed("T-1", PlaceRecord("1987.412.1"))], objects(1))
    assert ("nested-in-itself", "T-1", "") not in codes(made)
    assert [one.container.container_number for one in made.packings[0].nested] == ["T-1"]


def test_lying_in_an_unknown_container_is_reported() -> None:
    """A container whose outer one is not in the records prints alone."""
    made = arrange([ContainerRecord("B-1", inside="C-9")])
    assert codes(made)[0] == ("unknown-container", "B-1", "")
    assert "is not in the records" in made.findings[0].message


def test_nothing_gives_nothing() -> None:
    """No records are no reason to stumble."""
    assert arrange([]) == Arrangement((), ())
