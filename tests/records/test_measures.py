from __future__ import annotations

from service.records.measures import Grid, Measure


def test_measures_are_equal_by_what_they_say() -> None:
    """A record that is read again has the same measures."""
    assert Measure("height", 5) == Measure("height", 5.0)
    assert Measure("height", 5) != Measure("width", 5)
    assert Grid(columns=4, rows=3) != Grid(columns=3, rows=4)
