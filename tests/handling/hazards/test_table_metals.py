from __future__ import annotations

from service.handling.hazards.table_metals import METALS


def test_marks_follow_the_kind_of_danger() -> None:
    """Metals bear the marks for poison and for lasting harm, mercury that runs its own first."""
    assert {code: entry.marks for code, entry in METALS.items()} == {
        "arsenic": ("toxic", "health"),
        "mercury-liquid": ("mercury", "toxic", "health"),
        "mercury-salts": ("toxic", "health"),
        "lead": ("toxic", "health"),
        "beryllium": ("toxic", "health"),
        "selenium": ("toxic", "health"),
    }


def test_what_harms_at_once_comes_first() -> None:
    """What can kill or poison at once stands before everything else on a card."""
    assert {code for code, entry in METALS.items() if entry.urgency == 1} == {"mercury-liquid"}
