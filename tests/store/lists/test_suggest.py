from __future__ import annotations

import pytest
from sqlalchemy import Connection

from service.records.record import Collection, ContainerRecord, ObjectRecord
from service.store.lists.suggest import Suggestion, suggest_containers, suggest_objects
from service.store.save_records import save_records
from tests.store.made import STAMP

RECORDS = Collection(
    objects=(
        ObjectRecord("1987.412.10", "Bait jar"),
        ObjectRecord("1987.412.9", "Oil lamp"),
        ObjectRecord("50%/a_b", "Jar of 1987"),
    ),
    containers=(ContainerRecord("B-042", title="Small finds"),),
)


@pytest.fixture(autouse=True)
def saved(connection: Connection) -> None:
    """Save the records."""
    save_records(connection, RECORDS, stamp=STAMP)


ASKED = {
    "beginnings of numbers come first": ("1987", ["1987.412.9", "1987.412.10", "50%/a_b"]),
    "words of titles, in natural order": ("jar", ["50%/a_b", "1987.412.10"]),
    "capitals are no matter": ("BAIT", ["1987.412.10"]),
    "signs of the query language are signs": ("50%", ["50%/a_b"]),
    "no sign stands for another": ("_", []),
    "nothing typed": ("  ", []),
}


@pytest.mark.parametrize(("typed", "numbers"), ASKED.values(), ids=ASKED)
def test_objects_are_suggested(connection: Connection, typed: str, numbers: list[str]) -> None:
    """By the beginning of the number, then by words, each once."""
    assert [one.number for one in suggest_objects(connection, typed)] == numbers


def test_only_so_many_are_suggested(connection: Connection) -> None:
    """Whoever types on gets others."""
    assert len(suggest_objects(connection, "1987", limit=2)) == 2


def test_containers_are_suggested(connection: Connection) -> None:
    """With the title that tells them apart."""
    assert suggest_containers(connection, "small") == (Suggestion("B-042", "Small finds"),)
