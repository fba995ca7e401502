from __future__ import annotations

from service.handling.hazards.table_vessels import VESSELS


def test_marks_follow_the_kind_of_danger() -> None:
    """Fluids bear flame and poison, what is unknown poison first."""
    assert {code: entry.marks for code, entry in VESSELS.items()} == {
        "fluid-preserved": ("flammable", "toxic", "health"),
        "unknown-fluid": ("toxic", "flammable"),
        "medicine": ("toxic",),
        "controlled-drug": ("toxic",),
    }


def test_what_harms_at_once_comes_first() -> None:
    """What can kill or poison at once stands before everything else on a card."""
    assert {code for code, entry in VESSELS.items() if entry.urgency == 1} == {
        "controlled-drug",
        "unknown-fluid",
    }
