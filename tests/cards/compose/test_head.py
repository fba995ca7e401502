from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from service.cards.compose.head import compose_head, full_payload, object_address
from service.errors import AddressError
from service.records.record import Museum, ObjectRecord
from tests.contents.made import BOX, MUSEUM, objects, packing

PLAIN = Museum()
OBJECTS_ONLY = replace(MUSEUM, container_address="")


def test_a_head_says_which_container_and_whom_to_ask() -> None:
    """Number, kind, title, museum, questions and packing come from the records."""
    head = compose_head(packing(objects(2)), MUSEUM)
    assert (head.container_number, head.kind_words, head.title) == ("B-042", "Box", "Small finds")
    assert (head.museum, head.questions) == ("Port Merrow Museum", "Collections desk ext. 214")
    assert (head.revision, head.packed) == (3, "Packed 14 Oct 2026 by I. Hale")


@pytest.mark.parametrize(
    ("by", "on", "words"),
    [
        ("", None, ""),
        ("I. Hale", None, "Packed by I. Hale"),
        ("", date(2026, 10, 14), "Packed 14 Oct 2026"),
    ],
)
def test_who_packed_when(by: str, on: date | None, words: str) -> None:
    """What is not known is not said."""
    made = replace(packing(objects(1)), packed_by=by, packed_on=on)
    assert compose_head(made, MUSEUM).packed == words


@pytest.mark.parametrize(("show", "words"), [(False, ""), (True, "Store 2, Bay 4")])
def test_the_location_is_hidden_unless_wanted(words: str, *, show: bool) -> None:
    """A card that travels tells nobody where the store is."""
    made = packing(objects(1), replace(BOX, location=("Store 2", "Bay 4")))
    assert compose_head(made, replace(MUSEUM, show_location=show)).location == words


@pytest.mark.parametrize(
    ("museum", "count", "address"),
    [
        (MUSEUM, 2, "https://collections.example/c/B-042"),
        (OBJECTS_ONLY, 1, "https://collections.example/o/1987.412.1"),
        (OBJECTS_ONLY, 2, "B-042"),
        (PLAIN, 1, "B-042"),
        (replace(MUSEUM, upper_case_addresses=True), 1, "HTTPS://COLLECTIONS.EXAMPLE/C/B-042"),
        (
            replace(OBJECTS_ONLY, upper_case_addresses=True),
            1,
            "HTTPS://COLLECTIONS.EXAMPLE/O/1987.412.1",
        ),
    ],
    ids=[
        "container",
        "its only object",
        "several objects",
        "no pattern",
        "capitals",
        "its only object in capitals",
    ],
)
def test_where_the_symbol_leads(museum: Museum, count: int, address: str) -> None:
    """The container's address, else that of its only object, else the bare number."""
    assert compose_head(packing(objects(count)), museum).address == address


def test_where_an_object_leads() -> None:
    """The catalogue's own address wins; without a pattern the number stands alone."""
    (item,) = packing(objects(1)).contents
    own = replace(item, record=ObjectRecord("1", catalogue_url="https://catalogue.example/1"))
    assert object_address(own, MUSEUM) == "https://catalogue.example/1"
    assert object_address(item, PLAIN) == "1987.412.1"


def test_an_impossible_pattern_is_refused() -> None:
    """What is printed cannot be called back."""
    with pytest.raises(AddressError, match="cannot be used"):
        compose_head(packing(objects(1)), replace(MUSEUM, container_address="http://x/{object}"))


@pytest.mark.parametrize(
    ("address", "query", "payload"),
    [
        ("https://x.example/1", "r=1&k=BCDF", "https://x.example/1?r=1&k=BCDF"),
        ("HTTPS://X.EXAMPLE/1", "r=1&k=BCDF", "HTTPS://X.EXAMPLE/1?r=1&k=BCDF"),
        ("https://x.example/1", "", "https://x.example/1"),
        ("B-042", "r=1&k=BCDF", "B-042"),
    ],
)
def test_what_the_symbol_says(address: str, query: str, payload: str) -> None:
    """Revision and letters follow an address; a bare number stays bare."""
    head = replace(compose_head(packing(objects(1)), MUSEUM), address=address, query=query)
    assert full_payload(head) == payload


def test_a_query_joins_the_query_of_an_address() -> None:
    """An address that has a query already gets the rest behind an ampersand (RFC 3986, 3.4)."""
    head = compose_head(packing(objects(1)), MUSEUM)
    asked = replace(head, address="https://x.example/?id=1", query="r=1&k=BCDF")
    assert full_payload(asked) == "https://x.example/?id=1&r=1&k=BCDF"
