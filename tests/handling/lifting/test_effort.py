from __future__ import annotations

import pytest

from service.handling.lifting.effort import (
    ADVICE,
    Effort,
    find_own,
    find_team,
    find_tier,
    word_effort,
)
from service.records.museum.lifting import LiftingChoices, Tiers


def test_every_effort_has_words() -> None:
    """Each is said in one sentence that permits nothing."""
    assert set(ADVICE) == set(Effort)
    assert all(words.endswith(".") and "may" not in words for words in ADVICE.values())


@pytest.mark.parametrize(
    ("mass_kg", "effort"),
    [(1, 0), (1.1, 1), (2, 1), (2.1, 2), (4, 2), (4.1, 3), (8, 3), (8.1, 5)],
)
def test_a_tier_begins_above_its_figure(mass_kg: float, effort: int) -> None:
    """At a figure the milder advice still stands."""
    assert find_tier(mass_kg, Tiers(1, 2, 4, 8)) == effort


@pytest.mark.parametrize(
    ("mass_kg", "effort"),
    [
        (12, Effort.KEEP_CLOSE),
        (12.1, Effort.TWO_PEOPLE),
        (16, Effort.TWO_PEOPLE),
        (16.1, Effort.THREE_PEOPLE),
        (18, Effort.THREE_PEOPLE),
        (18.1, Effort.AID),
    ],
)
def test_a_team_ends_at_three(mass_kg: float, effort: Effort) -> None:
    """Twelve kilograms each: two lift 16, three lift 18, and nobody is added after that."""
    assert find_team(mass_kg, 12.0) is effort


def test_own_figures() -> None:
    """Only what the museum set itself counts, the graver first."""
    own = LiftingChoices(two_people_above_kg=9, aid_above_kg=20)
    assert find_own(9, own) == (Effort.KEEP_CLOSE, 0.0)
    assert find_own(9.1, own) == (Effort.TWO_PEOPLE, 9)
    assert find_own(20.1, own) == (Effort.AID, 20)
    assert find_own(99, LiftingChoices()) == (Effort.KEEP_CLOSE, 0.0)


def test_one_person_carries_at_least_as_the_weight_asks() -> None:
    """A heavy load within the figure of its place is still carried at waist height."""
    words = "One person: at waist height, close to the body."
    assert word_effort(Effort.KEEP_CLOSE, least=Effort.AID) == words
    assert word_effort(Effort.AID, least=Effort.KEEP_CLOSE) == ADVICE[Effort.AID]
