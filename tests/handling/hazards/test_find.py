from __future__ import annotations

import re
from dataclasses import replace

import pytest

from service.handling.hazards import (
    DISCREET,
    HAZARDS,
    RULES,
    STATE_WORDS,
    find_hazard,
    head_hazard,
    name_hazard,
    reword_hazards,
    word_hazard,
)
from service.handling.rule import Evidence
from service.records.codes import HAZARD_CODES
from service.records.museum.hazard_words import HazardWords
from service.records.museum.region import Region
from service.records.record import Collection, Hazard, HazardState, Museum, ObjectRecord
from service.render.task import TEMPLATES

PROMISES = re.compile(
    r"\bsafe(?:ly)?\b|harmless|non-?toxic|\bfree (?:of|from)\b|\bclean\b|no risk", re.IGNORECASE
)


def test_every_code_has_its_entry() -> None:
    """What a record may say has words, and no words stand for a code that cannot be recorded."""
    assert set(HAZARDS) == set(HAZARD_CODES)


@pytest.mark.parametrize("code", [*HAZARDS, "something-else"])
def test_every_entry_warns_and_defers(code: str) -> None:
    """An entry says what to do, what to wear and whom to consult, each with drawn marks."""
    entry = find_hazard(code)
    assert entry.instruction.endswith(".")
    assert entry.protection
    assert entry.protection[-1] not in ".;,"
    assert entry.urgency in {1, 2, 3}
    assert entry.marks
    for mark in entry.marks:
        assert (TEMPLATES / "pictograms" / f"{mark}.svg").exists()


@pytest.mark.parametrize("code", [*HAZARDS, "something-else"])
@pytest.mark.parametrize("region", list(Region))
@pytest.mark.parametrize("state", list(HazardState))
def test_no_entry_promises_anything(code: str, region: Region, state: HazardState) -> None:
    """Whatever of an entry may print calls nothing safe, harmless, non-toxic, clean or free of."""
    entry = find_hazard(code)
    consult = entry.consult.in_region(region)
    printed = " ".join(
        (
            name_hazard(Hazard(code, state)),
            entry.instruction,
            entry.protection,
            consult,
            entry.rule.says,
        )
    )
    assert consult
    assert not PROMISES.search(printed)


def test_promises_would_be_seen() -> None:
    """The words looked for above are found where they stand."""
    assert PROMISES.search("It is Safe to open.")
    assert PROMISES.search("Free of arsenic.")
    assert not PROMISES.search("The health and safety adviser.")


def test_rules_are_told_apart() -> None:
    """Each row has a rule of its own, and a published one names its source."""
    assert [rule.code for rule in RULES] == [
        *(f"hazard-{code}" for code in HAZARDS),
        "hazard-discreet",
        "hazard-unlisted",
    ]
    assert len({rule.code for rule in RULES}) == len(RULES)
    for rule in RULES:
        assert rule.says.endswith(".")
        assert bool(rule.source) == (rule.evidence is Evidence.PUBLISHED)


def test_what_nobody_may_announce_is_discreet() -> None:
    """Weapons, drugs and what is restricted stay off the outside of a box."""
    discreet = {code for code, entry in HAZARDS.items() if entry.discreet}
    assert discreet == {"ammunition", "firearm", "controlled-drug", "human-remains", "restricted"}
    assert (TEMPLATES / "pictograms" / f"{DISCREET.mark}.svg").exists()


def test_what_harms_objects_or_needs_respect_comes_last() -> None:
    """The others can harm people; what nobody may announce comes with what can kill at once."""
    last = {code for code, entry in HAZARDS.items() if entry.urgency == 3}
    assert last == {"acetate-film", "pests", "human-remains", "restricted"}
    assert DISCREET.urgency == 1


def test_a_listed_hazard_is_its_row() -> None:
    """And it is named alone where its state is not told."""
    assert all(find_hazard(code) is entry for code, entry in HAZARDS.items())
    assert head_hazard("Lead", "") == "Lead"
    assert head_hazard("Lead", "presumed") == "Lead presumed"


def test_an_unknown_hazard_prints_as_written() -> None:
    """A word of the museum's own is kept, with the general mark and the advice to ask."""
    entry = find_hazard("thorn-apple")
    assert (entry.name, entry.mark, entry.urgency) == ("Thorn apple", "caution", 2)
    assert entry.instruction == "Ask before opening or handling."
    assert entry.protection == "As those who are asked say"


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


_LEAD = Hazard("lead", HazardState.CONFIRMED)
_ARSENIC = Hazard("arsenic", HazardState.PRESUMED, instruction="Ask R. Vane.")
_MOULD = Hazard("mould", HazardState.UNCHECKED)
_RECORD = ObjectRecord("1", hazards=(_LEAD, _ARSENIC, _MOULD))
_OWN = Museum(hazard_words=(HazardWords("lead", "Mittens."), HazardWords("arsenic", "Hood.")))


def test_the_museum_words_what_the_record_does_not() -> None:
    """What stands in a record wins; everything else of a hazard stays."""
    collection = Collection(museum=_OWN, objects=(_RECORD, ObjectRecord("2")))
    first, second = reword_hazards(collection).objects
    assert first.hazards == (replace(_LEAD, instruction="Mittens."), _ARSENIC, _MOULD)
    assert second == ObjectRecord("2")


def test_a_museum_without_words_changes_nothing() -> None:
    """The collection is the same."""
    collection = Collection(objects=(_RECORD,))
    assert reword_hazards(collection) is collection


def test_own_words_stand_in_the_row() -> None:
    """Name, mark and help are those of the table."""
    row = word_hazard(replace(_LEAD, instruction="Mittens."))
    assert row == replace(find_hazard("lead"), instruction="Mittens.")
    assert word_hazard(_LEAD) == find_hazard("lead")
