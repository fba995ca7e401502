from __future__ import annotations

from service.handling.hazards.table_radiation import RADIATION_AND_ASBESTOS


def test_marks_follow_the_kind_of_danger() -> None:
    """Whatever radiates bears its mark first; asbestos has one of its own."""
    assert {code: entry.marks for code, entry in RADIATION_AND_ASBESTOS.items()} == {
        "asbestos": ("asbestos", "health"),
        "radium": ("radiation",),
        "radioactive-mineral": ("radiation", "toxic"),
        "thorium": ("radiation",),
        "uranium-glass": ("radiation",),
        "polonium": ("radiation",),
    }


def test_what_harms_at_once_comes_first() -> None:
    """What can kill or poison at once stands before everything else on a card."""
    assert {code for code, entry in RADIATION_AND_ASBESTOS.items() if entry.urgency == 1} == {
        "asbestos",
        "polonium",
        "radioactive-mineral",
        "radium",
    }
