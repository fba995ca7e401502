from __future__ import annotations

from service.keeping.rounds.due import DueContainer
from service.keeping.rounds.way import list_places, next_on_way
from service.store.lists.walk import Stand


def stand(number: str, location: str = "") -> Stand:
    """Give a packed container somewhere."""
    return Stand(number, "", location, "", number, is_packed=True)


FOUND = tuple(DueContainer(stand(number), ()) for number in ("B-1", "B-2"))


def test_the_next_one_is_named_until_the_end() -> None:
    """After the first comes the second, then nothing; who comes from elsewhere begins anew."""
    assert next_on_way(FOUND, "B-1") is FOUND[1]
    assert next_on_way(FOUND, "B-2") is None
    assert next_on_way(FOUND, "B-7") is FOUND[0]
    assert next_on_way((), "B-7") is None


def test_places_are_listed_with_what_they_are_part_of() -> None:
    """Each once, the whole before its parts; a container without a place adds none."""
    walk = (stand("B-1", "Store 1 / Bay 2"), stand("B-2", "Store 1 / Bay 3"), stand("B-3"))
    assert list_places(walk) == ("Store 1", "Store 1 / Bay 2", "Store 1 / Bay 3")
