from __future__ import annotations

import base64

import pytest
from sqlalchemy import Connection

from service.errors import CursorError
from service.records.record import Collection, ContainerRecord, ObjectRecord
from service.store.lists.pages import list_containers, list_objects
from service.store.save_records import save_records
from tests.store.made import BOXES, STAMP

NUMBERS = ("1987.412.9", "1987.412.10", "1987.412.10a", "1987.412.10b", "L2019.4")


@pytest.fixture(autouse=True)
def many(connection: Connection) -> None:
    """Save objects in another order than that of their numbers."""
    records = tuple(ObjectRecord(number) for number in NUMBERS[::-1])
    save_records(connection, Collection(objects=records), stamp=STAMP)


def test_pages_follow_one_another_in_natural_order(connection: Connection) -> None:
    """Every object comes once, 9 before 10 before 10a, however small the pages are."""
    seen: list[str] = []
    cursor = ""
    while True:
        page = list_objects(connection, limit=2, cursor=cursor)
        seen += [record.object_number for record in page.records]
        cursor = page.next_cursor
        if not cursor:
            break
    assert [number for number in seen if number in NUMBERS] == list(NUMBERS)
    assert len(seen) == len(set(seen)) == len(NUMBERS) + 3


def test_something_new_does_not_shift_the_pages(connection: Connection) -> None:
    """A record that comes before the cursor meanwhile is not met, and none is met twice."""
    first = list_containers(connection, limit=2)
    save_records(connection, Collection(containers=(ContainerRecord("A-1"),)), stamp=STAMP)
    rest = list_containers(connection, limit=2, cursor=first.next_cursor)
    numbers = [record.container_number for record in (*first.records, *rest.records)]
    assert numbers == list(BOXES)


@pytest.mark.parametrize(
    "cursor",
    [
        "x",
        "é",
        base64.urlsafe_b64encode(b"[1,2]").decode(),
        base64.urlsafe_b64encode(b"{}").decode(),
        base64.urlsafe_b64encode(b'["a",1%s]' % (b"0" * 30)).decode(),
        base64.urlsafe_b64encode(b'["a\\ud800",1]').decode(),
        base64.urlsafe_b64encode(b'["a\\u0000",1]').decode(),
    ],
)
def test_a_cursor_of_somebody_else_is_refused(connection: Connection, cursor: str) -> None:
    """What is no cursor of ours is an error of ours, whatever it is."""
    with pytest.raises(CursorError):
        list_objects(connection, limit=2, cursor=cursor)
