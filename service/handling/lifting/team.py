"""What several people lift together: less than the sum of what each could (HSE L23, reg. 4)."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from service.printed import to_print

SOURCE = to_print("HSE L23, guidance to regulation 4")

_SHARES: Mapping[int, float] = {1: 1.0, 2: 2 / 3, 3: 1 / 2}


def team_limit_kg(each_kg: Sequence[float]) -> float:
    """Give what a team lifts whose members could lift so much alone.

    Raises:
        ValueError: When there is nobody, or when there are more than three: no share is published
            for four, and more than that hardly work together.
    """
    people = len(each_kg)
    if people not in _SHARES:
        message = (
            f"{people} people lifting together are not a plan: no share is published for them."
            " Use a lifting aid, or assess the lift."
        )
        raise ValueError(message)
    return sum(each_kg) * _SHARES[people]
