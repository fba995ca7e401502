from __future__ import annotations

from dataclasses import replace
from datetime import date

from service.cards.card import WarningLabel
from service.cards.changes.change import Change, ChangeKind, Urgency
from service.cards.changes.compare_groups import compare_groups
from service.records.record import Hazard, HazardState, PlaceRecord
from tests.cards.changes.cases import (
    JAR,
    LEAD,
    PLACES,
    changed,
    collection,
    compare,
    compose,
    words,
)

CHECKED = Hazard("lead", HazardState.CONFIRMED, checked_on=date(2024, 3, 12))
BEFORE = collection(changed(LEAD, hazards=(CHECKED,)))


def test_another_check_is_told() -> None:
    """The label prints when it was checked, so that it is wrong after the next check."""
    later = replace(CHECKED, checked_on=date(2026, 3, 12), review_on=date(2029, 3, 12))
    (change,) = compare("warning", BEFORE, collection(changed(LEAD, hazards=(later,))))
    assert (change.kind, change.urgency) == (ChangeKind.HAZARD_WORDS, Urgency.WORDING)
    assert change.object_number == "1931.14.2"
    assert change.words.replace("\N{NO-BREAK SPACE}", " ") == (
        "check of lead on 1931.14.2 changed from 'checked 12 Mar 2024'"
        " to 'checked 12 Mar 2026 · review 12 Mar 2029'"
    )


def test_a_raised_hazard_and_another_object_are_told() -> None:
    """As on any other card: the hazard by its state, the object by its number."""
    presumed = Hazard("lead", HazardState.PRESUMED)
    after = collection(changed(LEAD, hazards=(CHECKED,)), changed(JAR, hazards=(presumed,)))
    assert words("warning", after, before=BEFORE) == ["hazard added: lead (presumed) on 1987.412.9"]
    raised = replace(CHECKED, state=HazardState.PRESUMED)
    before = collection(changed(LEAD, hazards=(raised,)))
    assert words("warning", BEFORE, before=before)[0] == (
        "hazard raised to confirmed: lead on 1931.14.2"
    )


def test_a_move_is_told_on_the_label_and_makes_no_tag_wrong() -> None:
    """The label says where the object lies, its own tag does not."""
    places = (PLACES[0], PlaceRecord("1931.14.2", layer=2, compartment="B4"))
    after = collection(changed(LEAD, hazards=(CHECKED,)), places=places)
    assert words("warning", after, before=BEFORE) == ["1931.14.2 moved from layer 2 to layer 2 B4"]
    assert compare("tag", BEFORE, after) == ()


def test_titles_are_told_to_the_office_alone() -> None:
    """One that must no longer stand outside would else be told there."""
    after = collection(changed(LEAD, title="Sounding lead", hazards=(CHECKED,)))
    assert compare("warning", BEFORE, after) == (
        Change(
            ChangeKind.OBJECT_WORDS,
            Urgency.WORDING,
            "title of 1931.14.2 changed from 'Lead line' to 'Sounding lead'",
            "1931.14.2",
            "title of 1931.14.2 changed",
        ),
    )


def test_other_kinds_have_no_groups() -> None:
    """Only warning labels are compared so."""
    assert list(compare_groups(compose("lid", BEFORE), compose("lid", BEFORE))) == []


def test_other_help_and_other_gloves_are_told() -> None:
    """Both stand on the label, and both come with the program, not with the records."""
    card = compose("warning", BEFORE)
    assert isinstance(card, WarningLabel)
    (group,) = card.groups
    other = replace(group, ask="a plumber", protection="Mittens")
    told = list(compare_groups(replace(card, groups=(other,)), card))
    worn = "Thin nitrile gloves; where there is dust, coveralls and a dust mask"
    adviser = "a conservator or health and safety adviser"
    assert told == [
        Change(ChangeKind.HAZARD_WORDS, Urgency.WORDING, reason)
        for reason in (
            f"whom to ask about Lead changed from 'a plumber' to '{adviser}'",
            f"protection from Lead changed from 'Mittens' to '{worn}'",
        )
    ]
