"""Tests for the words of a second language on each kind of card."""

from __future__ import annotations

import hashlib
import json
from dataclasses import asdict, replace

import pytest

from service.cards.card import Card, ContentsList
from service.cards.changes.list_changes import list_changes
from service.cards.compose.asked.warning_label import compose_warning_label
from service.cards.fingerprint import check_letters, fingerprint_card
from service.cards.kept_text import card_as_text, card_from_text
from service.cards.kinds import CARD_KINDS, compose_cards
from service.cards.second.add import add_second_words
from service.contents.packing import Packing
from service.handling.cautions import CAUTIONS
from service.handling.hazards import HAZARDS
from service.records.museum.language import LANGUAGE_NAMES, Language
from service.records.record import HazardState, ObjectRecord, Questions, Weight
from tests.cards.second.made import MADE_UP, phrasebook
from tests.contents.made import BOX, GARMENT_COVER, MUSEUM, hazard, objects, packing

LEAD = replace(
    objects(1)[0],
    hazards=(hazard("lead", HazardState.PRESUMED), hazard("phosphorus", HazardState.UNCHECKED)),
    cautions=("fragile", "do-not-hang"),
)
HEAVY = replace(BOX, stacking_limit=2, heavy_end="left")
LEAD_WORDS = ("Ołów (przypuszczalnie)", "Rękawice. Umyć ręce.")


def _compose(made: Packing, kind: str, *, speaks: bool = True) -> Card:
    book = MADE_UP if speaks else None
    cards = compose_cards(made, MUSEUM, kinds=CARD_KINDS, phrasebook=book)
    return next(card for card in cards if card.kind == kind)


def _said(card: Card) -> dict[str, str]:
    assert card.head.second is not None
    return dict(card.head.second.words)


def test_a_lid_card_says_lift_hazards_cautions_and_limits() -> None:
    """Every phrase there are words for has them beside it, and nothing else has."""
    card = _compose(packing([replace(LEAD, weight=None)], HEAVY), "lid-card")
    assert _said(card) == {
        "Weight not known": "Masa nieznana",
        "Weigh before lifting.": "Zważyć przed podniesieniem.",
        "Lead presumed": LEAD_WORDS[0],
        "Gloves. Do not disturb dust. Wash hands.": LEAD_WORDS[1],
        "Ask before opening or handling.": "Najpierw zapytać.",
        "Fragile": "Kruche",
        "At most 2 boxes on top": "Pudła na wierzchu: najwyżej 2",
        "Heavy end: left": "Ciężki koniec",
    }


def test_a_cover_card_says_what_a_lid_card_says() -> None:
    """Its strip is the same."""
    said = _said(_compose(packing([LEAD], GARMENT_COVER), "cover-card"))
    assert said["Lead presumed"] == LEAD_WORDS[0]
    assert said["Fragile"] == "Kruche"


def test_an_end_label_says_its_first_hazard() -> None:
    """It has no room for more; where a caution comes first, it says nothing."""
    assert _said(_compose(packing([LEAD]), "end-label")) == {"Lead presumed": LEAD_WORDS[0]}
    careful = packing([replace(LEAD, hazards=())])
    assert _compose(careful, "end-label").head.second is None


def test_a_contents_list_says_each_line() -> None:
    """The line of a hazard, whatever its record adds, and that of cautions; the foot has a note."""
    record = replace(LEAD, hazards=(replace(LEAD.hazards[0], note="white bloom", method="XRF"),))
    card = _compose(packing([record]), "contents-list")
    line = (
        "Lead presumed (XRF). White bloom. Gloves. Do not disturb dust. Wash hands."
        " Thin nitrile gloves; where there is dust, coveralls and a dust mask."
        " Ask a conservator or health and safety adviser."
    )
    assert _said(card) == {
        line: "Ołów (przypuszczalnie). Rękawice. Umyć ręce. Cienkie rękawice",
        "Fragile, Do not hang": "Kruche",
    }
    assert card.head.second is not None
    assert card.head.second.note == MADE_UP.note
    lid = _compose(packing([record]), "lid-card").head.second
    assert lid is not None
    assert not lid.note


@pytest.mark.parametrize("kind", ["lid-card", "end-label", "contents-list"])
def test_without_a_second_language_a_card_is_what_it_was(kind: str) -> None:
    """The fingerprint does not count a field that says nothing."""
    card = _compose(packing([LEAD]), kind, speaks=False)
    said = asdict(card)
    for name in ("revision", "packed", "query", "check_letters", "second"):
        del said["head"][name]
    text = json.dumps(said, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
    assert fingerprint_card(card) == hashlib.sha256(text.encode()).hexdigest()


@pytest.mark.parametrize("kind", ["lid-card", "end-label", "contents-list"])
def test_a_card_in_two_languages_is_sealed_and_kept(kind: str) -> None:
    """Its letters count the other words, its address too where it is dated; it reads back equal."""
    card, plain = (_compose(packing([LEAD]), kind, speaks=speaks) for speaks in (True, False))
    letters = check_letters(fingerprint_card(card))
    assert card.head.check_letters == letters != plain.head.check_letters
    assert card.head.query == ("" if kind == "end-label" else f"r={card.head.revision}&k={letters}")
    assert card_from_text(card_as_text(card)) == card


def test_a_card_that_says_nothing_stays_as_it_is() -> None:
    """A phrasebook that has no word for a card changes nothing."""
    (plain,) = objects(1)
    made = packing([replace(plain, weight=Weight(900.0))], replace(BOX, gross=Weight(2000.0)))
    cards = (_compose(made, "lid-card", speaks=speaks) for speaks in (True, False))
    assert len({fingerprint_card(card) for card in cards}) == 1


def _everything(state: HazardState) -> ObjectRecord:
    return replace(
        objects(1)[0],
        hazards=tuple(hazard(code, state) for code in HAZARDS),
        cautions=tuple(CAUTIONS),
    )


@pytest.mark.parametrize("state", HazardState)
@pytest.mark.parametrize("language", LANGUAGE_NAMES)
def test_no_printed_word_of_the_tables_is_left_in_english(
    language: Language, state: HazardState
) -> None:
    """A card that warns of the whole table has words beside every heading and instruction."""
    book = phrasebook(language)
    for limit, mass_g in ((0, None), (1, 2_000), (3, 5_000), (3, 12_000), (3, 20_000), (3, 40_000)):
        gross = None if mass_g is None else Weight(float(mass_g))
        for hand_height_mm in (None, 900.0):
            box = replace(HEAVY, stacking_limit=limit, gross=gross, hand_height_mm=hand_height_mm)
            made = packing([replace(_everything(state), weight=None)], box)
            (card,) = (
                one
                for one in compose_cards(made, MUSEUM, kinds=CARD_KINDS, phrasebook=book)
                if one.kind == "lid-card"
            )
            said = _said(card)
            handling = card.handling  # type: ignore[union-attr]
            printed = [handling.lift.advice, *handling.limits]
            printed += [warn.heading for warn in (*handling.hazards, *handling.cautions)]
            printed += [warn.instruction for warn in handling.hazards]
            assert [words for words in printed if words not in said] == []
            assert not any("{" in words for words in said.values())


def test_other_english_words_get_no_translation_of_ours() -> None:
    """Where a list instructs in other words than the table, only the name is said again."""
    card = _compose(packing([LEAD]), "contents-list")
    assert isinstance(card, ContentsList)
    line = "Lead presumed. Wear the blue gloves. Ask the desk."
    other = replace(card, entries=(replace(card.entries[0], hazards=(line,)),))
    assert _said(add_second_words(other, MADE_UP))[line] == LEAD_WORDS[0]


WELSH = phrasebook(Language.WELSH)
ONE, TWO = objects(2)
LOOSE_LEAD = replace(
    ONE,
    weight=None,
    hazards=(hazard("lead", HazardState.PRESUMED),),
    cautions=("fragile",),
)
WORN = "Menig nitril tenau; lle mae llwch, dillad gwarchod a mwgwd llwch"


def _in_welsh(made: Packing, kind: str, *, speaks: bool = True) -> Card:
    book = WELSH if speaks else None
    cards = compose_cards(made, MUSEUM, kinds=CARD_KINDS, phrasebook=book)
    return next(card for card in cards if card.kind == kind)


def test_a_warning_label_says_all_of_a_hazard() -> None:
    """Its name in each state, what to do, what is worn, and that somebody is asked."""
    known = replace(TWO, hazards=(hazard("lead", HazardState.CONFIRMED),))
    assert _said(_in_welsh(packing([LOOSE_LEAD, known]), "warning-label")) == {
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
    own = replace(LOOSE_LEAD.hazards[0], instruction="Ask the keeper before you lift it.")
    said = _said(_in_welsh(packing([replace(LOOSE_LEAD, hazards=(own,))]), "warning-label"))
    assert own.instruction not in said
    assert said["Lead presumed"] == "Plwm (rhagdybir)"


def test_a_shoulder_tag_says_hazards() -> None:
    """Name, state and what to do: it says no more in English either."""
    assert _said(_in_welsh(packing([LOOSE_LEAD], GARMENT_COVER), "shoulder-tag")) == {
        "Lead presumed": "Plwm (rhagdybir)",
        "Gloves. Do not disturb dust. Wash hands.": (
            "Menig. Peidiwch â chodi llwch. Golchwch eich dwylo."
        ),
    }


def test_an_object_tag_says_lift_hazards_cautions_and_to_ask() -> None:
    """All its words of handling, on a tag that has no container."""
    said = _said(_in_welsh(packing([LOOSE_LEAD]), "object-tag"))
    assert said["Weigh before lifting."] == "Pwyswch cyn codi."
    assert said["Lead presumed"] == "Plwm (rhagdybir)"
    assert said["Fragile"] == "Bregus"
    assert said["Ask first"] == "Gofynnwch yn gyntaf"


@pytest.mark.parametrize("kind", ["warning-label", "shoulder-tag", "object-tag"])
def test_another_text_makes_it_wrong(kind: str) -> None:
    """Its letters count the other words, it is kept whole, and the reason is told."""
    made = packing([LOOSE_LEAD], GARMENT_COVER)
    card, plain = (_in_welsh(made, kind, speaks=speaks) for speaks in (True, False))
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
