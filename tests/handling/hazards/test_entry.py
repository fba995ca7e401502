from __future__ import annotations

from service.handling.hazards.entry import (
    Consult,
    HazardEntry,
    from_memory,
    practice,
    published,
)
from service.handling.rule import Evidence, Rule
from service.records.museum.region import Region

BOTH = Consult("the keeper", uk="the adviser", us="the hygienist")


def test_each_region_has_its_own_people() -> None:
    """The words of the museum's region are taken, those for any country where it has none."""
    assert BOTH.in_region(Region.UK) == "the adviser"
    assert BOTH.in_region(Region.US) == "the hygienist"
    assert BOTH.in_region(Region.ELSEWHERE) == "the keeper"
    assert {Consult("the desk").in_region(region) for region in Region} == {"the desk"}


def test_a_row_leads_with_its_first_mark() -> None:
    """Where there is room for one mark it is the first, and whom to ask is said for any country."""
    entry = HazardEntry(
        "Lye", ("corrosive", "toxic"), "Gloves.", "Gloves", BOTH, practice("lye", "")
    )
    assert (entry.mark, entry.ask, entry.urgency, entry.discreet) == (
        "corrosive",
        "the keeper",
        2,
        False,
    )


def test_rules_say_what_stands_behind_them() -> None:
    """Only a published rule names a source."""
    assert published("lye", "Says.", "A book") == Rule(
        "hazard-lye", "Says.", Evidence.PUBLISHED, "A book"
    )
    assert practice("lye", "Says.") == Rule("hazard-lye", "Says.", Evidence.PRACTICE)
    assert from_memory("lye", "Says.") == Rule("hazard-lye", "Says.", Evidence.MEMORY)
