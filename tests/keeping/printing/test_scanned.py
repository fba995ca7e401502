from __future__ import annotations

import pytest

from service.keeping.printing.attach import ScannedCard
from service.keeping.printing.scanned import read_card, read_number
from service.records.record import Museum

OURS = Museum(container_address="https://x.example/?id={container_number}")


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("B-042", "B-042"),
        (" B 42/a ", "B 42/a"),
        ("https://x.example/?id=B-042", "B-042"),
        ("https://old.example/c/B%2F42?r=1&k=KMTF", "B/42"),
        ("http://[", "http://["),
    ],
)
def test_a_number_is_read_from_what_was_scanned_or_typed(text: str, number: str) -> None:
    """The museum's pattern, that of another time, or the bare number."""
    assert read_number(text, OURS) == number


@pytest.mark.parametrize(
    "text",
    ["", "B-042", "https://x.example/?id=B-042", "https://x.example/?id=B&r=x&k=K", "http://[::"],
)
def test_what_is_not_the_symbol_of_a_dated_card_is_none(text: str) -> None:
    """An end label has neither revision nor letters."""
    assert read_card(text, OURS) is None


def test_a_dated_card_is_read_whole() -> None:
    """Number, revision and letters."""
    card = read_card("https://x.example/?id=B-042&r=7&k=KMTF", OURS)
    assert card == ScannedCard("B-042", 7, "KMTF")
