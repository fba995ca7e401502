from __future__ import annotations

import re

import pytest

from service.handling.hazards import DISCREET, HAZARDS, STATE_WORDS, find_hazard, name_hazard
from service.records.codes import HAZARD_CODES
from service.records.record import Hazard, HazardState
from service.render.task import TEMPLATES


def test_every_code_has_its_entry() -> None:
    """What a record may say has words, and no words stand for a code that cannot be recorded."""
    assert set(HAZARDS) == set(HAZARD_CODES)


@pytest.mark.parametrize("code", [*HAZARDS, "something-else"])
def test_every_entry_warns_and_defers(code: str) -> None:
    """An entry says what to do and whom to ask, names its source, and promises nothing."""
    entry = find_hazard(code)
    assert entry.instruction.endswith(".")
    assert entry.ask
    assert entry.source
    assert entry.urgency in {1, 2, 3}
    assert (TEMPLATES / "pictograms" / f"{entry.mark}.svg").exists()
    assert not re.search(r"\bsafe\b|harmless", f"{entry.name} {entry.instruction}", re.IGNORECASE)


def test_what_nobody_may_announce_is_discreet() -> None:
    """Weapons, drugs and what is restricted stay off the outside of a box."""
    discreet = {code for code, entry in HAZARDS.items() if entry.discreet}
    assert discreet == {"ammunition", "firearm", "controlled-drug", "human-remains", "restricted"}
    assert (TEMPLATES / "pictograms" / f"{DISCREET.mark}.svg").exists()


def test_an_unknown_hazard_prints_as_written() -> None:
    """A word of the museum's own is kept, with the general mark and the advice to ask."""
    entry = find_hazard("thorn-apple")
    assert (entry.name, entry.mark) == ("Thorn apple", "caution")
    assert "Ask before" in entry.instruction


@pytest.mark.parametrize(
    ("state", "words"),
    [
        (HazardState.CONFIRMED, "Arsenic confirmed"),
        (HazardState.PRESUMED, "Arsenic presumed"),
        (HazardState.UNCHECKED, "Arsenic not checked"),
    ],
)
def test_a_hazard_is_named_with_its_state(state: HazardState, words: str) -> None:
    """Nobody takes a presumption for a finding, or silence for an all-clear."""
    assert name_hazard(Hazard("arsenic", state)) == words
    assert set(STATE_WORDS) == set(HazardState)
