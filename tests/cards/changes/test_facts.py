"""Tests for hazards and cautions as facts."""

from __future__ import annotations

import pytest

from service.cards.changes.facts import RANKS, Fact, hazard_in, read_heading

HEADINGS = {
    "Arsenic presumed": ("Arsenic", "presumed"),
    "Radium paint confirmed": ("Radium paint", "confirmed"),
    "Do not open: ask first": ("Do not open: ask first", ""),
}


@pytest.mark.parametrize(("heading", "read"), HEADINGS.items(), ids=HEADINGS)
def test_a_heading_has_a_name_and_a_state(heading: str, read: tuple[str, str]) -> None:
    """A discreet heading has a name only."""
    assert read_heading(heading) == read


def test_a_line_of_the_list_begins_with_its_hazard() -> None:
    """Method, day and advice behind the name are no part of the fact."""
    line = "Arsenic confirmed (XRF, 12 Mar 2024, R. Vane). Dusty. Gloves."
    assert hazard_in(line, "X.112") == Fact("Arsenic", "confirmed", "X.112")
    assert hazard_in("Odd dust", "X.112") == Fact("Odd dust", "", "X.112")


def test_more_is_known_of_what_is_confirmed() -> None:
    """Unchecked, presumed, confirmed: the order in which a hazard is raised."""
    assert RANKS == ("not checked", "presumed", "confirmed")
