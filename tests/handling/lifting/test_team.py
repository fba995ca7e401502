from __future__ import annotations

import pytest

from service.handling.lifting.team import team_limit_kg


def test_one_person_is_no_team() -> None:
    """Alone one lifts what one lifts alone."""
    assert team_limit_kg([16.0]) == 16.0


@pytest.mark.parametrize("people", [0, 4, 5])
def test_no_plan_without_a_published_share(people: int) -> None:
    """Nobody, four and more are refused with words that say what to do instead."""
    with pytest.raises(ValueError, match=rf"^{people} people .* not a plan: .* lifting aid"):
        team_limit_kg([20.0] * people)
