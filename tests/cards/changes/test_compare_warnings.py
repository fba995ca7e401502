"""Tests for telling what changed in hazards, lifting, limits and cautions."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.changes.change import ChangeKind, Urgency
from service.records.record import Collection, Hazard, HazardState, Weight
from tests.cards.changes.cases import BOX, JAR, LEAD, changed, collection, compare, words


def arsenic(state: HazardState, *cautions: str) -> Collection:
    """Give the box with arsenic on the jar."""
    return collection(changed(JAR, hazards=(Hazard("arsenic", state),), cautions=cautions))


NONE, PRESUMED = collection(), arsenic(HazardState.PRESUMED)
CONFIRMED, UNCHECKED = arsenic(HazardState.CONFIRMED), arsenic(HazardState.UNCHECKED)

HAZARDS = {
    "added": (NONE, PRESUMED, "hazard added: arsenic (presumed) on 1987.412.9"),
    "raised": (PRESUMED, CONFIRMED, "hazard raised to confirmed: arsenic on 1987.412.9"),
    "lowered": (CONFIRMED, PRESUMED, "hazard now presumed, was confirmed: arsenic on 1987.412.9"),
    "gone": (PRESUMED, NONE, "hazard no longer recorded here: arsenic (presumed) on 1987.412.9"),
    "never checked": (NONE, UNCHECKED, "hazard added: arsenic (not checked) on 1987.412.9"),
}


@pytest.mark.parametrize("kind", ["lid", "end", "list"])
@pytest.mark.parametrize(("before", "after", "reason"), HAZARDS.values(), ids=HAZARDS)
def test_hazards_come_first(kind: str, before: Collection, after: Collection, reason: str) -> None:
    """Every kind of card tells a hazard first, in the same words, with how much is known."""
    first = compare(kind, before, after)[0]
    assert (first.words.lower(), first.urgency) == (reason, Urgency.HAZARD_OR_LIFT)


def test_a_hazard_that_is_no_longer_recorded_is_not_called_gone() -> None:
    """A silent record is no evidence, so no word says that the object does no harm."""
    (first, *_) = compare("lid", CONFIRMED, NONE)
    assert first.kind is ChangeKind.HAZARD_UNRECORDED
    assert "no longer recorded" in first.words


LIFTS = {
    "heavier": (
        collection(changed(LEAD, weight=Weight(9_000.0))),
        (
            "weight now 10.6 kg (sum of the records), was 5.6 kg (sum of the records)."
            " At waist height, close to the body."
        ),
    ),
    "no longer known": (
        collection(changed(LEAD, weight=None)),
        (
            "weight now 1.6 kg (at least: 1 of 2 not weighed), was 5.6 kg (sum of the records)."
            " Weigh before lifting."
        ),
    ),
    "on a shelf": (
        collection(box=replace(BOX, hand_height_mm=900.0)),
        (
            "lift advice changed from 'Not above the shoulder at arm's length.'"
            " to 'One person: not above the shoulder at arm's length.'"
        ),
    ),
    "weighed": (
        collection(box=replace(BOX, gross=Weight(5_600.0))),
        "weight now 5.6 kg (weighed), was 5.6 kg (sum of the records)",
    ),
}


@pytest.mark.parametrize(("after", "reason"), LIFTS.values(), ids=LIFTS)
def test_lifting_is_told_with_its_honesty(after: Collection, reason: str) -> None:
    """The weight, where it comes from, and what to do about it stand in one sentence."""
    (change,) = compare("end", collection(), after)
    assert (change.words, change.urgency) == (reason, Urgency.HAZARD_OR_LIFT)


CAUTIONS = {
    "of the whole box": ("fragile", "caution added: fragile", Urgency.HAZARD_OR_LIFT),
    "of one object": (
        "light-sensitive",
        "caution added: keep from light on 1987.412.9",
        Urgency.CONTENTS,
    ),
}


@pytest.mark.parametrize(("code", "reason", "urgency"), CAUTIONS.values(), ids=CAUTIONS)
def test_cautions_are_told(code: str, reason: str, urgency: Urgency) -> None:
    """One that decides how the box is lifted is as urgent as its weight."""
    change = compare("lid", collection(), collection(changed(JAR, cautions=(code,))))[0]
    assert (change.words, change.urgency) == (reason, urgency)


def test_limits_of_the_container_are_told() -> None:
    """What may stand on top is a matter of lifting and stacking."""
    after = collection(box=replace(BOX, stacking_limit=1))
    assert words("lid", after) == ["limit of the container added: 'At most 1 box on top'"]


DISCREET = ["firearm", "ammunition", "restricted", "human-remains"]


@pytest.mark.parametrize("code", DISCREET)
def test_what_may_not_stand_outside_is_not_told_outside(code: str) -> None:
    """The office reads what it is; the paper that is carried about says only to ask."""
    after = collection(changed(JAR, hazards=(Hazard(code, HazardState.CONFIRMED),)))
    name = code.replace("-", " ")
    for change in compare("list", collection(), after):
        assert name not in change.outside_words.lower().replace("'restricted'", "")


def test_another_reason_for_the_same_advice_is_told() -> None:
    """A box that moved to a worse shelf says so, where one person still lifts it."""
    before, after = (
        collection(box=replace(BOX, hand_height_mm=height_mm)) for height_mm in (900.0, 1000.0)
    )
    (change,) = compare("lid", before, after)
    assert change.urgency is Urgency.HAZARD_OR_LIFT
    assert change.words.startswith("reason of the lift advice changed from '5.6 kg: within 10 kg")
