from __future__ import annotations

from service.records.naturally import natural_key, sort_naturally


def test_letters_count_without_their_case_and_still_differ() -> None:
    """Two numbers that differ only in case stand together, in one lasting order."""
    assert sort_naturally(["B2", "b10", "b2", "a1"], number=str) == ["a1", "B2", "b2", "b10"]


def test_zeros_are_not_stripped() -> None:
    """A number with a zero is another number than one without."""
    assert natural_key("1954.03") != natural_key("1954.3")
