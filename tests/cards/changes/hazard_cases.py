"""Pairs of records that differ in a hazard of the jar, and what is told of them."""

from __future__ import annotations

from service.cards.changes.change import ChangeKind
from service.records.record import Collection, Hazard, HazardState
from tests.cards.changes.cases import JAR, changed, collection


def hazardous(code: str, state: HazardState = HazardState.PRESUMED) -> Collection:
    """Give the box with a hazard on the jar."""
    return collection(changed(JAR, hazards=(Hazard(code, state),)))


def arsenic(state: HazardState, *cautions: str) -> Collection:
    """Give the box with arsenic on the jar."""
    return collection(changed(JAR, hazards=(Hazard("arsenic", state),), cautions=cautions))


NONE, PRESUMED = collection(), arsenic(HazardState.PRESUMED)
CONFIRMED, UNCHECKED = arsenic(HazardState.CONFIRMED), arsenic(HazardState.UNCHECKED)

HAZARDS = {
    "added": (
        NONE,
        PRESUMED,
        ChangeKind.HAZARD_ADDED,
        "hazard added: arsenic (presumed) on 1987.412.9",
    ),
    "raised": (
        PRESUMED,
        CONFIRMED,
        ChangeKind.HAZARD_RAISED,
        "hazard raised to confirmed: arsenic on 1987.412.9",
    ),
    "lowered": (
        CONFIRMED,
        PRESUMED,
        ChangeKind.HAZARD_LOWERED,
        "hazard now presumed, was confirmed: arsenic on 1987.412.9",
    ),
    "gone": (
        PRESUMED,
        NONE,
        ChangeKind.HAZARD_UNRECORDED,
        "hazard no longer recorded here: arsenic (presumed) on 1987.412.9",
    ),
    "never checked": (
        NONE,
        UNCHECKED,
        ChangeKind.HAZARD_ADDED,
        "hazard added: arsenic (not checked) on 1987.412.9",
    ),
    "abbreviated": (
        NONE,
        hazardous("ddt"),
        ChangeKind.HAZARD_ADDED,
        "hazard added: DDT or other organic pesticide (presumed) on 1987.412.9",
    ),
}


RAISED = (HazardState.PRESUMED, HazardState.CONFIRMED)
OUTSIDE = {
    "list, added": (
        "list",
        (NONE, hazardous("firearm")),
        "hazard added: firearm (presumed) on 1987.412.9",
        "hazard added: 'Do not open' on 1987.412.9",
    ),
    "list, raised": (
        "list",
        tuple(hazardous("ammunition", state) for state in RAISED),
        "hazard raised to confirmed: ammunition or ordnance on 1987.412.9",
        "hazard changed: 'Do not open' on 1987.412.9",
    ),
    "list, lowered": (
        "list",
        tuple(hazardous("firearm", state) for state in reversed(RAISED)),
        "hazard now presumed, was confirmed: firearm on 1987.412.9",
        "hazard changed: 'Do not open' on 1987.412.9",
    ),
    "list, gone": (
        "list",
        (hazardous("firearm"), NONE),
        "hazard no longer recorded here: firearm (presumed) on 1987.412.9",
        "hazard no longer recorded here: 'Do not open' on 1987.412.9",
    ),
    "list, restricted": (
        "list",
        (NONE, hazardous("human-remains")),
        "hazard added: 'Restricted' (presumed) on 1987.412.9",
        "hazard added: 'Restricted' on 1987.412.9",
    ),
    "label, added": (
        "end",
        (NONE, hazardous("firearm")),
        "hazard added: 'Do not open' on 1987.412.9",
        "",
    ),
    "label, restricted": (
        "end",
        (NONE, hazardous("restricted")),
        "hazard added: 'Restricted' on 1987.412.9",
        "",
    ),
}
