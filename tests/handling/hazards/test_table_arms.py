from __future__ import annotations

from service.handling.hazards.table_arms import ARMS


def test_marks_follow_the_kind_of_danger() -> None:
    """What may explode bears that mark; for a firearm there is only the general one."""
    assert {code: entry.marks for code, entry in ARMS.items()} == {
        "ammunition": ("explosive",),
        "firearm": ("caution",),
        "picric-acid": ("explosive", "toxic"),
    }


def test_what_harms_at_once_comes_first() -> None:
    """What can kill or poison at once stands before everything else on a card."""
    assert {code for code, entry in ARMS.items() if entry.urgency == 1} == {
        "ammunition",
        "firearm",
        "picric-acid",
    }
