"""Tests for the second language of warning labels and tags."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.card import Card
from service.cards.changes.list_changes import list_changes
from service.cards.compose.asked.warning_label import compose_warning_label
from service.cards.kept_text import card_as_text, card_from_text
from service.cards.kinds import CARD_KINDS, compose_cards
from service.cards.second.add import add_second_words
from service.contents.packing import Packing
from service.handling.hazards import HAZARDS
from service.records.museum.language import LANGUAGE_NAMES, Language
from service.records.record import HazardState, Questions
from tests.cards.second.made import phrasebook
from tests.contents.made import GARMENT_COVER, MUSEUM, hazard, objects, packing

WELSH = phrasebook(Language.WELSH)
ONE, TWO = objects(2)
LEAD = replace(
    ONE,
    weight=None,
    hazards=(hazard("lead", HazardState.PRESUMED),),
    cautions=("fragile",),
)
WORN = "Menig nitril tenau; lle mae llwch, dillad gwarchod a mwgwd llwch"


def _compose(made: Packing, kind: str, *, speaks: bool = True) -> Card:
    book = WELSH if speaks else None
    cards = compose_cards(made, MUSEUM, kinds=CARD_KINDS, phrasebook=book)
    return next(card for card in cards if card.kind == kind)


def _said(card: Card) -> dict[str, str]:
    assert card.head.second is not None
    return dict(card.head.second.words)


def test_a_warning_label_says_all_of_a_hazard() -> None:
    """Its name in each state, what to do, what is worn, and that somebody is asked."""
    known = replace(TWO, hazards=(hazard("lead", HazardState.CONFIRMED),))
    assert _said(_compose(packing([LEAD, known]), "warning-label")) == {
        "Lead confirmed": "Plwm (cadarnhawyd)",
        "Lead presumed": "Plwm (rhagdybir)",
        "Gloves. Do not disturb dust. Wash hands.": (
            "Menig. Peidiwch â chodi llwch. Golchwch eich dwylo."
        ),
        "Thin nitrile gloves; where there is dust, coveralls and a dust mask": WORN,
        "Protection": "Amddiffyniad",
        "more on the contents list": "mwy ar y rhestr gynnwys",
        "Ask first": "Gofynnwch yn gyntaf",
    }


@pytest.mark.parametrize(
    ("code", "role", "english", "welsh"),
    [
        ("ammunition", "", "Ask first", "Gofynnwch yn gyntaf"),
        ("ammunition", "Desk", "Ask Desk", "Gofynnwch: Desk"),
        ("restricted", "Desk", "Do not open: ask Desk", "Peidiwch ag agor. Gofynnwch: Desk"),
        ("restricted", "", "Do not open: ask first", "Peidiwch ag agor: gofynnwch yn gyntaf"),
    ],
)
def test_a_discreet_label_says_whom_to_ask(code: str, role: str, english: str, welsh: str) -> None:
    """The people keep the name that the museum gave them, and nothing else is said of it."""
    made = packing([replace(ONE, hazards=(hazard(code),))])
    made = replace(made, container=replace(made.container, questions=Questions()))
    museum = replace(MUSEUM, questions=Questions(role=role))
    card = add_second_words(compose_warning_label(made, museum), WELSH)
    assert card.groups[0].instruction == english
    assert _said(card)[english] == welsh
    assert not any(name in _said(card) for name in ("Ammunition or ordnance confirmed",))


def test_what_a_museum_instructs_itself_is_not_said_again() -> None:
    """Its own precaution begins like ours and still has no translation of ours."""
    own = replace(LEAD.hazards[0], instruction="Ask the keeper before you lift it.")
    said = _said(_compose(packing([replace(LEAD, hazards=(own,))]), "warning-label"))
    assert own.instruction not in said
    assert said["Lead presumed"] == "Plwm (rhagdybir)"


def test_a_shoulder_tag_says_hazards() -> None:
    """Name, state and what to do: it says no more in English either."""
    assert _said(_compose(packing([LEAD], GARMENT_COVER), "shoulder-tag")) == {
        "Lead presumed": "Plwm (rhagdybir)",
        "Gloves. Do not disturb dust. Wash hands.": (
            "Menig. Peidiwch â chodi llwch. Golchwch eich dwylo."
        ),
    }


def test_an_object_tag_says_lift_hazards_cautions_and_to_ask() -> None:
    """All its words of handling, on a tag that has no container."""
    said = _said(_compose(packing([LEAD]), "object-tag"))
    assert said["Weigh before lifting."] == "Pwyswch cyn codi."
    assert said["Lead presumed"] == "Plwm (rhagdybir)"
    assert said["Fragile"] == "Bregus"
    assert said["Ask first"] == "Gofynnwch yn gyntaf"


@pytest.mark.parametrize("kind", ["warning-label", "shoulder-tag", "object-tag"])
def test_another_text_makes_it_wrong(kind: str) -> None:
    """Its letters count the other words, it is kept whole, and the reason is told."""
    made = packing([LEAD], GARMENT_COVER)
    card, plain = (_compose(made, kind, speaks=speaks) for speaks in (True, False))
    assert card.head.check_letters != plain.head.check_letters
    assert card_from_text(card_as_text(card)) == card
    other = replace(WELSH, messages={**WELSH.messages, "Lead": "Y plwm"})
    anew = add_second_words(plain, other)
    assert anew.head.check_letters != card.head.check_letters
    told = [change.words for change in list_changes(card, anew)]
    assert len(told) == 1
    assert "translation beside the English" in told[0]


@pytest.mark.parametrize("language", LANGUAGE_NAMES)
@pytest.mark.parametrize("code", HAZARDS)
def test_no_hazard_of_a_label_is_left_in_english(code: str, language: Language) -> None:
    """Each has words beside its headings, what to do and what is worn, whatever the language."""
    made = packing([replace(ONE, hazards=(hazard(code),))])
    card = add_second_words(compose_warning_label(made, MUSEUM), phrasebook(language))
    (group,) = card.groups
    printed = (*group.headings, group.instruction, group.protection)
    assert [words for words in printed if words and words not in _said(card)] == []
    assert not any("{" in words for words in _said(card).values())


@pytest.mark.parametrize("language", LANGUAGE_NAMES)
def test_what_is_worn_can_be_shortened_alike(language: Language) -> None:
    """Where the English parts what is always worn from the rest, the other language does too."""
    for entry in HAZARDS.values():
        said = phrasebook(language).say(entry.protection)
        assert said.count(";") == entry.protection.count(";"), said
