"""Adds the words of a second language to a card that is composed."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from typing import Any

from service.cards.card import (
    Card,
    ContentsList,
    CoverCard,
    EndLabel,
    LidCard,
    ObjectTag,
    ShoulderTag,
    SideCard,
    WarningLabel,
)
from service.cards.changes.facts import hazard_in
from service.cards.changes.views import is_caution_line
from service.cards.fingerprint import AnyCard, seal_card
from service.cards.parts import Handling, SecondWords, Warn
from service.cards.second.phrasebook import Phrasebook
from service.cards.second.phrases import (
    ASK_FIRST,
    MORE_WORN,
    PROTECTION,
    UNLISTED,
    list_entries,
)
from service.cards.words import join_words
from service.handling.lifting import LiftAdvice

_Pairs = Iterator[tuple[str, str]]
_ENTRIES = {entry.name: entry for entry in list_entries()}


def add_second_words(card: AnyCard, phrasebook: Phrasebook) -> AnyCard:
    """Give the card with the words that stand beside its English ones, sealed anew.

    A card that says nothing the phrasebook has words for stays as it is.
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
        return say_handling(card.handling, phrasebook)
    return _SAY[card.kind](card, phrasebook)


def say_handling(handling: Handling, phrasebook: Phrasebook) -> _Pairs:
    """Pair the words of a strip of handling with what stands beside them, "" where nothing does."""
    yield from _say_lift(handling.lift, phrasebook)
    yield from _say_hazards(handling.hazards, phrasebook)
    for warn in handling.cautions:
        yield warn.heading, phrasebook.say(warn.heading)
    for words in handling.limits:
        yield words, phrasebook.say_limit(words)


def _say_hazards(hazards: Iterable[Warn], phrasebook: Phrasebook) -> _Pairs:
    for warn in hazards:
        yield warn.heading, phrasebook.say_hazard(warn.heading)
        yield warn.instruction, phrasebook.say(warn.instruction)


def _say_warning(card: WarningLabel, phrasebook: Phrasebook) -> _Pairs:
    """Say each hazard as it is known of some object, what to do, what is worn, and to ask."""
    for group in card.groups:
        for heading in group.headings:
            yield heading, phrasebook.say_hazard(heading)
        # Only a hazard that may not be announced names no object, and says in our words to ask.
        say = phrasebook.say if group.objects else phrasebook.say_asking
        yield group.instruction, say(group.instruction)
        yield group.protection, phrasebook.say(group.protection)
    for words in (PROTECTION, MORE_WORN, ASK_FIRST):
        yield words, phrasebook.say(words)


def _say_shoulder(card: ShoulderTag, phrasebook: Phrasebook) -> _Pairs:
    return _say_hazards(card.hazards, phrasebook)


def _say_tag(card: ObjectTag, phrasebook: Phrasebook) -> _Pairs:
    handling = Handling(card.lift, card.hazards, card.cautions)
    yield from say_handling(handling, phrasebook)
    yield ASK_FIRST, phrasebook.say(ASK_FIRST)


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


_SAY: dict[str, Callable[[Any, Phrasebook], _Pairs]] = {
    "contents-list": _say_list,
    "end-label": _say_label,
    "warning-label": _say_warning,
    "shoulder-tag": _say_shoulder,
    "object-tag": _say_tag,
}
"""What each kind says that has no strip of handling."""
