from __future__ import annotations

from dataclasses import replace
from datetime import date

from service.cards.papers.isolation_label import INCOMING, label_incoming, label_object
from tests.cards.papers.made import BONES, ISOLATION, LEAD, SHOWN, box, label_of


def test_a_label_says_since_when_and_why() -> None:
    """Until when is left to a pen where nobody knows; hazards and lift stand there too."""
    label = label_of(LEAD)
    assert (label.number, label.title) == ("B-042", "Small finds")
    assert (label.since, label.until, label.why) == ("25 Nov 2026", "", "Pests found")
    assert [warn.heading for warn in label.handling.hazards] == ["Lead presumed"]
    assert (label.isolated_by, label.questions) == ("Ada Quill", "Collections desk ext. 214")


def test_an_object_can_be_isolated() -> None:
    """Of a discreet one neither title nor hazard is told."""
    until = replace(ISOLATION, until=date(2026, 12, 9))
    label = label_object(box(LEAD).contents[0], until, SHOWN)
    assert (label.number, label.title, label.until) == ("1931.14.2", LEAD.title, "9 Dec 2026")
    discreet = label_object(box(BONES).contents[0], ISOLATION, SHOWN)
    assert (discreet.title, discreet.handling.hazards[0].heading) == (
        "Restricted: ask first",
        "Restricted",
    )


def test_what_has_just_come_in_is_not_known() -> None:
    """Nothing recorded is said to be nothing recorded."""
    label = label_incoming("E2561.1", ISOLATION, SHOWN)
    assert (label.number, label.title, label.is_recorded) == ("E2561.1", INCOMING, False)
    assert label.handling.lift.advice == "Weigh before lifting."
