"""Tests for where an object number begins and ends in a file name."""

from __future__ import annotations

import pytest

from service.records.photos.boundaries import begins_here, ends_here
from service.records.photos.numbers import index_numbers
from service.records.photos.written import read_written
from service.records.record import Collection, ObjectRecord

NUMBERS = index_numbers(
    Collection(objects=tuple(map(ObjectRecord, ("1987.412.3", "X.9", "1999.103.2", "1.2.3a"))))
)


@pytest.mark.parametrize(
    ("name", "start", "expected"),
    [
        ("1987.412.3", 0, True),
        ("img 1987.412.3", 1, True),
        ("x1987.412.3", 1, False),
        ("hat1987.412.3", 1, False),
        ("hat 1987.412.3", 1, True),
        ("hat.1987.412.3", 1, False),
        ("5 1987.412.3", 1, True),
        ("5.1987.412.3", 1, False),
    ],
)
def test_beginnings(name: str, start: int, *, expected: bool) -> None:
    """What stands in front is apart from the number, or part of it."""
    written = read_written(name)
    assert begins_here(written, start, start + 3, NUMBERS) is expected


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("1987.412.3", True),
        ("1987.412.3 hat", True),
        ("1987.412.3b", True),
        ("1987.412.3_1", True),
        ("1987-412-3-1", True),
        ("1987.412.3.1", False),
        ("1987.412.3bc", False),
        ("1987.412.3verso", True),
        ("1.2.3b", False),
        ("1-2-3-b", False),
        ("1.2.3_b", True),
    ],
)
def test_endings(name: str, *, expected: bool) -> None:
    """What stands behind is apart from the number, or may go on with it."""
    assert ends_here(read_written(name), 0, 3, NUMBERS) is expected


def test_a_number_that_ends_in_a_letter_takes_no_digit() -> None:
    """A digit directly behind a letter is part of whatever the letter is."""
    assert not ends_here(read_written("1.2.3a4"), 0, 4, NUMBERS)
