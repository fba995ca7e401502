"""Tests for how what was sent is read, as text."""

from __future__ import annotations

from service.keeping.intake.how_read import AS_IT_IS, HowRead, read_how, write_how
from tests.records.mapping.made import MAPPING


def test_it_comes_back_as_it_was_written() -> None:
    """Tables, mappings and the name are kept; an empty text says nothing."""
    how = HowRead({"objects": "list.csv"}, {"objects": MAPPING}, boxes_made=True, named="ours")
    assert read_how(write_how(how)) == how
    assert read_how("") == AS_IT_IS
