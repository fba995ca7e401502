"""Tests for the words of a second language on each kind of card."""

from __future__ import annotations

import hashlib
import json
from dataclasses import asdict, replace

import pytest

from service.cards.card import Card, ContentsList
from service.cards.fingerprint import check_letters, fingerprint_card
from service.cards.kept_text import card_as_text, card_from_text
from service.cards.kinds import CARD_KINDS, compose_cards
from service.cards.second.add import add_second_words
from service.contents.packing import Packing
from service.handling.cautions import CAUTIONS
from service.handling.hazards import HAZARDS
from service.records.museum.language import LANGUAGE_NAMES, Language
from service.records.record import HazardState, ObjectRecord, Weight
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
