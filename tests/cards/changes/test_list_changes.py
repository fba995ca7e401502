"""Tests for the whole list of reasons."""

from __future__ import annotations

from dataclasses import replace

from service.cards.card import LidCard
from service.cards.changes.change import Change, ChangeKind, Urgency
from service.cards.changes.list_changes import list_changes
from service.records.record import Hazard, HazardState, PlaceRecord
from tests.cards.changes.cases import BOX, JAR, PLACES, changed, collection, compare, compose


def test_a_card_that_holds_has_no_reasons() -> None:
    """Another revision, packer and day alone make no card wrong."""
    printed = compose("lid", collection())
    head = replace(printed.head, revision=9, packed="Packed 1 Jan 2027", check_letters="BCDF")
    assert list_changes(printed, replace(printed, head=head)) == ()


def test_the_most_urgent_reason_comes_first() -> None:
    """Hazard or lift, then contents, then wording."""
    after = collection(
        changed(JAR, hazards=(Hazard("arsenic", HazardState.PRESUMED),)),
        box=replace(BOX, title="Finds"),
        places=(*PLACES, PlaceRecord("X.112", layer=2)),
    )
    urgencies = [change.urgency for change in compare("lid", collection(), after)]
    assert urgencies == sorted(urgencies)
    assert {*urgencies} == {*Urgency}


def test_another_kind_of_card_is_told() -> None:
    """Two kinds of card have nothing to compare."""
    words = "kind of card changed from 'lid-card' to 'end-label'"
    assert list_changes(compose("lid", collection()), compose("end", collection())) == (
        Change(ChangeKind.CARD, Urgency.CONTENTS, words),
    )


def test_no_card_is_wrong_without_a_reason() -> None:
    """Where no comparer sees what differs there is still one reason."""
    printed = compose("lid", collection(changed(JAR, cautions=("light-sensitive",))))
    assert isinstance(printed, LidCard)
    bare = replace(printed, handling=replace(printed.handling, cautions=()))
    assert list_changes(printed, bare) == (
        Change(ChangeKind.CARD, Urgency.CONTENTS, "what the card shows changed"),
    )
