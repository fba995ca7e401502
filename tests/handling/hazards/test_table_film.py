from __future__ import annotations

from service.handling.hazards.table_film import FILM_AND_PLASTICS


def test_marks_follow_the_kind_of_danger() -> None:
    """What burns at once bears the flame first; acetate only its acid."""
    assert {code: entry.marks for code, entry in FILM_AND_PLASTICS.items()} == {
        "nitrate-film": ("flammable", "toxic"),
        "acetate-film": ("corrosive",),
        "celluloid": ("flammable", "corrosive"),
    }


def test_what_harms_at_once_comes_first() -> None:
    """What can kill or poison at once stands before everything else on a card."""
    assert {code for code, entry in FILM_AND_PLASTICS.items() if entry.urgency == 1} == {
        "nitrate-film"
    }
