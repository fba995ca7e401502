"""What a museum chooses about lifting: the method, its figures, and how its people lift."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class LiftMethod(StrEnum):
    """By what the weight of a container is judged where its shelf height is known."""

    HSE = "hse"
    """The lifting and lowering filter of HSE INDG143."""
    NIOSH = "niosh"
    """The revised NIOSH lifting equation."""


class FilterColumn(StrEnum):
    """Which figures of the filter count: those for women fit everyone, those for men do not."""

    LOWER = "lower"
    HIGHER = "higher"


class Duration(StrEnum):
    """How long lifting goes on in a day: up to one, two or eight hours (NIOSH 94-110, p. 13)."""

    SHORT = "short"
    MODERATE = "moderate"
    LONG = "long"


@dataclass(frozen=True, slots=True)
class Tiers:
    """Above how many kg each advice begins, lightest first."""

    not_high_kg: float
    waist_kg: float
    two_people_kg: float
    aid_kg: float

    @property
    def rise(self) -> bool:
        """Whether none begins below the one before it."""
        figures = (self.not_high_kg, self.waist_kg, self.two_people_kg, self.aid_kg)
        return list(figures) == sorted(figures)


USUAL_TIERS = {
    FilterColumn.LOWER: Tiers(3.0, 7.0, 16.0, 25.0),
    FilterColumn.HIGHER: Tiers(5.0, 10.0, 25.0, 25.0),
}
"""From HSE INDG143 (2020): of each column the smallest cell, the smallest close to the body and the
largest; 25 kg is the largest cell of all, above which nobody lifts unassessed."""


@dataclass(frozen=True, slots=True)
class LiftingChoices:
    """How a museum's cards advise on lifting; without a word of the museum the usual ones.

    `twist_deg` is how far people turn while they lift, `lifts_per_min` how often they do. The
    figures in kg are the museum's own; None stands for the usual one.
    """

    method: LiftMethod = LiftMethod.HSE
    column: FilterColumn = FilterColumn.LOWER
    twist_deg: float = 0.0
    lifts_per_min: float = 0.2
    duration: Duration = Duration.SHORT
    not_high_above_kg: float | None = None
    waist_above_kg: float | None = None
    two_people_above_kg: float | None = None
    aid_above_kg: float | None = None

    def tiers(self, *, share_ratio: float = 1.0) -> Tiers:
        """Give where each advice begins; of usual figures only a share where one is named."""
        usual = USUAL_TIERS[self.column]
        return Tiers(
            _own(self.not_high_above_kg, usual.not_high_kg * share_ratio),
            _own(self.waist_above_kg, usual.waist_kg * share_ratio),
            _own(self.two_people_above_kg, usual.two_people_kg * share_ratio),
            _own(self.aid_above_kg, usual.aid_kg * share_ratio),
        )


USUAL_LIFTING = LiftingChoices()


def _own(own_kg: float | None, usual_kg: float) -> float:
    return usual_kg if own_kg is None else own_kg
