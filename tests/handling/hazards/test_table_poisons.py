from __future__ import annotations

from service.handling.hazards.table_poisons import POISONS


def test_marks_follow_the_kind_of_danger() -> None:
    """Residues bear the mark for lasting harm first, poisons the one for poison."""
    assert {code: entry.marks for code, entry in POISONS.items()} == {
        "pesticide": ("health", "toxic"),
        "ddt": ("health", "toxic"),
        "naphthalene": ("health", "flammable"),
        "poison": ("toxic",),
        "cyanide": ("toxic",),
        "strychnine": ("toxic",),
        "poisoned-point": ("toxic", "sharp"),
        "carbon-tetrachloride": ("toxic", "health"),
        "corrosive": ("corrosive",),
    }


def test_what_harms_at_once_comes_first() -> None:
    """What can kill or poison at once stands before everything else on a card."""
    assert {code for code, entry in POISONS.items() if entry.urgency == 1} == {
        "carbon-tetrachloride",
        "cyanide",
        "poison",
        "poisoned-point",
        "strychnine",
    }
