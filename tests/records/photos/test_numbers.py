"""Tests for the index of object numbers."""

from __future__ import annotations

from service.records.photos.numbers import index_numbers
from service.records.record import Collection, Museum, ObjectRecord, Part


def test_what_the_index_knows() -> None:
    """It knows numbers, parts, letters in front, neighbours and the usual length."""
    objects = (ObjectRecord("PMM.77.3", parts=(Part("a"), Part("", "sash"))), ObjectRecord("1.2.3"))
    numbers = index_numbers(Collection(museum=Museum(short_name="Quay"), objects=objects))
    assert set(numbers.entries) == {("pmm", "77", "3"), ("pmm", "77", "3", "a"), ("1", "2", "3")}
    assert numbers.prefixes == {"pmm"}
    assert numbers.lengths == {"pmm": (3, 4), "1": (3,)}
    assert numbers.usual_length == 3
    assert numbers.goes_on(("pmm", "77", "3"), "b")
    assert not numbers.goes_on(("pmm", "77", "3"), "4")
    assert "quay" in numbers.words_in_front


def test_no_objects_no_numbers() -> None:
    """An empty collection has an empty index."""
    assert index_numbers(Collection()).entries == {}
