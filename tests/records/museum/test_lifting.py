from __future__ import annotations

from service.records.museum.lifting import USUAL_TIERS, FilterColumn, LiftingChoices, Tiers


def test_usual_tiers_rise() -> None:
    """No usual advice begins below a milder one."""
    assert all(USUAL_TIERS[column].rise for column in FilterColumn)
    assert not Tiers(3, 2, 16, 25).rise


def test_own_figures_stand_for_usual_ones() -> None:
    """Only usual figures are lessened for twisting or lifting often."""
    assert LiftingChoices().tiers() == Tiers(3, 7, 16, 25)
    assert LiftingChoices(column=FilterColumn.HIGHER).tiers() == Tiers(5, 10, 25, 25)
    own = LiftingChoices(not_high_above_kg=2, waist_above_kg=6, two_people_above_kg=9)
    assert own.tiers(share_ratio=0.5) == Tiers(2, 6, 9, 12.5)
