from __future__ import annotations

from service.handling.hazards.table_physical import PHYSICAL


def test_marks_follow_the_kind_of_danger() -> None:
    """Each way to be hurt bears its mark; a needle also that for infection."""
    assert {code: entry.marks for code, entry in PHYSICAL.items()} == {
        "sharps": ("sharp",),
        "needles": ("sharp", "biological"),
        "broken-glass": ("broken-glass", "sharp"),
        "battery": ("corrosive",),
        "pressurised": ("pressure",),
        "spring-loaded": ("spring", "crush"),
        "electrical": ("electrical",),
    }


def test_what_harms_at_once_comes_first() -> None:
    """What can kill or poison at once stands before everything else on a card."""
    assert {code for code, entry in PHYSICAL.items() if entry.urgency == 1} == {
        "needles",
        "pressurised",
    }
