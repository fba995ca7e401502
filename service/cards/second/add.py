"""Adds the words of a second language to a card that is composed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from service.cards.card import Card, ContentsList, CoverCard, EndLabel, LidCard, SideCard
from service.cards.changes.facts import hazard_in
from service.cards.changes.views import is_caution_line
from service.cards.fingerprint import AnyCard, seal_card
from service.cards.parts import Handling, SecondWords
from service.cards.second.phrasebook import Phrasebook
from service.cards.second.phrases import UNLISTED, list_entries
from service.cards.words import join_words
from service.handling.lifting import LiftAdvice

_Pairs = Iterator[tuple[str, str]]
_ENTRIES = {entry.name: entry for entry in list_entries()}


def add_second_words(card: AnyCard, phrasebook: Phrasebook) -> AnyCard:
    """Give the card with the words that stand beside its English ones, sealed anew.

    Tags and warning labels have room for English alone. A card that says nothing the phrasebook has
    words for stays as it is.
    """
    words = {english: said for english, said in _find_pairs(card, phrasebook) if said}
    if not words:
        return card
    second = SecondWords(
        phrasebook.language,
        tuple(words.items()),
        phrasebook.note if isinstance(card, ContentsList) else "",
    )
    worded = replace(card, head=replace(card.head, second=second))
    return seal_card(worded, dated=bool(card.head.query))


def _find_pairs(card: Card, phrasebook: Phrasebook) -> _Pairs:
    if isinstance(card, LidCard | SideCard | CoverCard):
        return _say_handling(card.handling, phrasebook)
    if isinstance(card, ContentsList):
        return _say_list(card, phrasebook)
    if isinstance(card, EndLabel):
        return _say_label(card, phrasebook)
    return iter(())


def _say_handling(handling: Handling, phrasebook: Phrasebook) -> _Pairs:
    yield from _say_lift(handling.lift, phrasebook)
    for warn in handling.hazards:
        yield warn.heading, phrasebook.say_hazard(warn.heading)
        yield warn.instruction, phrasebook.say(warn.instruction)
    for warn in handling.cautions:
        yield warn.heading, phrasebook.say(warn.heading)
    for words in handling.limits:
        yield words, phrasebook.say_limit(words)


def _say_lift(lift: LiftAdvice, phrasebook: Phrasebook) -> _Pairs:
    if not lift.figure_kg:
        yield lift.qualifier, phrasebook.say(lift.qualifier)
    yield lift.advice, phrasebook.say(lift.advice)


def _say_label(card: EndLabel, phrasebook: Phrasebook) -> _Pairs:
    """Say what the first mark means where it is that of a hazard."""
    for warn in card.marks[:1]:
        if warn.instruction:
            yield warn.heading, phrasebook.say_hazard(warn.heading)


def _say_list(card: ContentsList, phrasebook: Phrasebook) -> _Pairs:
    """Say each line of hazards or cautions, and the advice on lifting where the list gives it."""
    if card.lift.reason:
        yield card.lift.advice, phrasebook.say(card.lift.advice)
    for entry in card.entries:
        for line in entry.hazards:
            yield line, _say_line(line, phrasebook)
        for line in entry.details:
            if is_caution_line(line):
                said = (phrasebook.say(name) for name in line.split(", "))
                yield line, join_words(said, between=", ")


def _say_line(line: str, phrasebook: Phrasebook) -> str:
    """Say name, instruction and what is worn, as far as the line says them in our words."""
    fact = hazard_in(line, "")
    heading = phrasebook.say_hazard(join_words((fact.name, fact.state), between=" "))
    entry = _ENTRIES.get(fact.name, UNLISTED)
    ours = [words for words in (entry.instruction, entry.protection) if words.rstrip(".") in line]
    said = (phrasebook.say(words).rstrip(".") for words in ours)
    return join_words((heading, *said), between=". ")
