from __future__ import annotations

from service.handling.hazards.table_living import LIVING


def test_marks_follow_the_kind_of_danger() -> None:
    """What may infect bears that mark; what is restricted bears no warning of danger."""
    assert {code: entry.marks for code, entry in LIVING.items()} == {
        "mould": ("biological", "mask"),
        "biological": ("biological", "mask"),
        "pests": ("pests",),
        "human-remains": ("restricted",),
        "restricted": ("restricted",),
    }


def test_what_harms_at_once_comes_first() -> None:
    """What can kill or poison at once stands before everything else on a card."""
    assert {code for code, entry in LIVING.items() if entry.urgency == 1} == set()
