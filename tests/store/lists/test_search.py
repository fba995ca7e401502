from __future__ import annotations

import pytest
from sqlalchemy import Connection

from service.records.record import (
    Collection,
    ContainerRecord,
    Hazard,
    HazardState,
    ObjectRecord,
    PackingRecord,
    PlaceRecord,
)
from service.store.kept.outs import Slip, note_out
from service.store.lists.search import LyingIn, search
from service.store.save_records import save_records
from tests.store.made import LATER, STAMP

JAR, GWISG, LAMP = "1987.412.10", "1987.412.9", "L2019.4"
RECORDS = Collection(
    objects=(
        ObjectRecord(JAR, "Bait jar", materials=("stoneware",), former_numbers=("QRS/88",)),
        ObjectRecord(GWISG, "Gŵn du", hazards=(Hazard("arsenic", HazardState.PRESUMED),)),
        ObjectRecord(LAMP, "Ship's lamp: 50% off_scale", object_name="Λάμπα"),
    ),
    containers=(ContainerRecord("B-042", title="Small finds", location=("Store 2", "Bay 4")),),
    packings=(PackingRecord("B-042", 1, (PlaceRecord(JAR), PlaceRecord(LAMP, ("a",)))),),
)


@pytest.fixture(autouse=True)
def saved(connection: Connection) -> None:
    """Save the records."""
    save_records(connection, RECORDS, stamp=STAMP)


ASKED = {
    "whole number": ("1987.412.9", [GWISG]),
    "number without dots": ("198741210", [JAR]),
    "beginning of a number": ("1987.412", [GWISG, JAR]),
    "former number": ("qrs/88", [JAR]),
    "title": ("bait", [JAR]),
    "accents left out": ("gwn", [GWISG]),
    "accents written": ("GŴN", [GWISG]),
    "material": ("stonew", [JAR]),
    "hazard": ("arsenic", [GWISG]),
    "another script": ("λαμπα", [LAMP]),
    "two words": ("jar stoneware", [JAR]),
    "two words of two objects": ("jar lamp", []),
    "nothing": ("", []),
}


@pytest.mark.parametrize(("asked", "numbers"), ASKED.values(), ids=ASKED)
def test_objects_are_found_by_what_people_remember(
    connection: Connection, asked: str, numbers: list[str]
) -> None:
    """Numbers, titles, materials and hazards, from their beginning, in natural order."""
    assert [hit.object_number for hit in search(connection, asked).objects] == numbers


@pytest.mark.parametrize(
    "asked",
    [
        '"',
        "jar OR lamp",
        "jar NOT lamp",
        "NEAR(jar)",
        "words:jar",
        "jar*^",
        "%",
        "_",
        "' | !",
        "a\0b",
    ],
)
def test_nothing_that_is_asked_is_syntax(connection: Connection, asked: str) -> None:
    """Operators, quotes and signs of the databases are words or nothing, never an error."""
    found = search(connection, asked)
    assert {hit.object_number for hit in found.objects} <= {JAR, LAMP}
    assert not (" OR " in asked and found.objects)


def test_the_answer_says_which_box_it_is_in(connection: Connection) -> None:
    """Container, location and parts stand beside the object, and since when it is out."""
    note_out(connection, Slip(JAR, "B-042"), stamp=LATER)
    (jar,) = search(connection, "bait").objects
    assert jar.lies_in == (LyingIn("B-042", "Store 2 / Bay 4", ()),)
    assert jar.out_since == LATER.at
    (lamp,) = search(connection, "lamp").objects
    assert (lamp.lies_in[0].parts, lamp.out_since) == (("a",), None)


@pytest.mark.parametrize("asked", ["b-042", "small", "bay 4", "store 2 bay"])
def test_containers_are_found_by_number_title_and_place(connection: Connection, asked: str) -> None:
    """The container itself is found, too."""
    (hit,) = search(connection, asked).containers
    assert (hit.container_number, hit.title) == ("B-042", "Small finds")


def test_what_changed_is_found_by_its_new_words(connection: Connection) -> None:
    """The index follows the records in the same transaction."""
    save_records(connection, Collection(objects=(ObjectRecord(JAR, "Crab pot"),)), stamp=LATER)
    assert search(connection, "bait").objects == ()
    assert [hit.title for hit in search(connection, "crab").objects] == ["Crab pot"]


def test_long_answers_are_cut_and_say_so(connection: Connection) -> None:
    """No more than asked for comes, the first in natural order."""
    found = search(connection, "1987", limit=1)
    assert ([hit.object_number for hit in found.objects], found.more) == ([GWISG], True)
