from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from service.records.naturally import natural_key, natural_text, sort_naturally


def test_letters_count_without_their_case_and_still_differ() -> None:
    """Two numbers that differ only in case stand together, in one lasting order."""
    assert sort_naturally(["B2", "b10", "b2", "a1"], number=str) == ["a1", "B2", "b2", "b10"]


def test_zeros_are_not_stripped() -> None:
    """A number with a zero is another number than one without."""
    assert natural_key("1954.03") != natural_key("1954.3")


PIECES = st.sampled_from(
    ["1987", "12", "9", "010", "0", ".", "-", "/", " ", "a", "B", "é", "٣", "L"]
)


@given(st.lists(st.lists(PIECES, max_size=6).map("".join), max_size=8, unique=True))
def test_keys_as_text_sort_as_keys_do(numbers: list[str]) -> None:
    """A database that only knows characters sorts by the text as a person would."""
    assert sorted(numbers, key=natural_text) == sorted(numbers, key=natural_key)
    encoded = sorted(numbers, key=lambda number: natural_text(number).encode())
    assert encoded == sorted(numbers, key=natural_key)
