"""What somebody who scans a printed card is told: whether it still holds, and what changed.

Only what may stand outside: no contents, no location, and of discreet objects no more than a card
shows.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from service.cards.card import Card
from service.cards.changes.list_changes import list_changes
from service.cards.compose.warn import warn_outside
from service.cards.fingerprint import check_letters, fingerprint_card
from service.cards.kept_text import card_from_text
from service.cards.kinds import find_kind
from service.cards.parts import Warn
from service.cards.standing import Answer, Fate, KnownCard, Standing, judge_scan
from service.cards.words import join_words, write_questions
from service.contents.packing import Packing
from service.handling.lifting import LiftAdvice
from service.keeping.today import Today, compose_today
from service.pages.ruler import Ruler
from service.records.record import Museum
from service.store.handles import Connection
from service.store.printed.card import PrintedCard
from service.store.printed.runs import find_printed


@dataclass(frozen=True, slots=True)
class NewestCard:
    """A card as it would be printed now, to compare with one whose symbol names no revision."""

    kind: str
    revision: int
    letters: str


@dataclass(frozen=True, slots=True)
class ScanAnswer:
    """The answer to a scan, in words that anybody may see.

    Attributes:
        container_number: As it was scanned.
        standing: Current, out of date, withdrawn or unknown, with a sentence.
        changes: What changed since the card was printed, the most urgent first.
        warnings: Hazards and cautions as they are printed outside today.
        lift: How to lift it, as printed today.
        questions: Whom to ask.
        newest: The cards of the container as they would be printed now.
    """

    container_number: str
    standing: Standing
    changes: tuple[str, ...] = ()
    warnings: tuple[str, ...] = ()
    lift: str = ""
    questions: str = ""
    newest: tuple[NewestCard, ...] = ()


_UNKNOWN_CONTAINER = Standing(
    Answer.UNKNOWN,
    "This number is not known here. Do not rely on the card; ask before you open or lift.",
)


def answer_scan(
    connection: Connection,
    ruler: Ruler,
    container_number: str,
    *,
    revision: int | None,
    letters: str,
) -> ScanAnswer:
    """Answer a scan of the card that has this container number, revision and letters."""
    today = compose_today(connection, ruler, [container_number])
    packing = today.packings.get(container_number)
    if packing is None:
        return ScanAnswer(container_number, _UNKNOWN_CONTAINER)
    printed = find_printed(connection, container_number)
    known = {card.card_id: _know(card, today) for card in printed}
    standing = judge_scan(revision, letters, known.values())
    scanned = [card for card in printed if _is_scanned(known[card.card_id], revision, letters)]
    return ScanAnswer(
        container_number,
        standing,
        _tell_changes(scanned, today) if standing.answer is Answer.OUT_OF_DATE else (),
        *_say_handling(packing, today.museum),
        _list_newest(today, printed),
    )


def _know(card: PrintedCard, today: Today) -> KnownCard:
    made = card.made
    wanted = today.cards.get(made.key)
    return KnownCard(
        made.revision,
        check_letters(made.fingerprint),
        fingerprint_card(card_from_text(made.content)),
        None if wanted is None else fingerprint_card(wanted),
        Fate(card.state.value),
    )


def _is_scanned(card: KnownCard, revision: int | None, letters: str) -> bool:
    return (card.revision, card.letters) == (revision, letters.strip().upper())


def _tell_changes(scanned: Sequence[PrintedCard], today: Today) -> tuple[str, ...]:
    """Say what changed since the newest of the cards that look like the scanned one."""
    if not scanned:
        return ()
    made = scanned[-1].made
    wanted = today.cards.get(made.key)
    if wanted is None:
        return ()
    changes = list_changes(card_from_text(made.content), wanted)
    return tuple(dict.fromkeys(change.outside_words for change in changes))


def _say_handling(packing: Packing, museum: Museum) -> tuple[tuple[str, ...], str, str]:
    handling = warn_outside(packing, museum)
    warnings = (*map(_word_warning, (*handling.hazards, *handling.cautions)), *handling.limits)
    questions = write_questions(packing.container.questions, museum.questions)
    return warnings, _word_lift(handling.lift), questions


def _word_warning(warn: Warn) -> str:
    return join_words((warn.heading, warn.instruction), between=". ")


def _word_lift(lift: LiftAdvice) -> str:
    weight = join_words((f"{lift.figure_kg} kg" if lift.figure_kg else "", lift.qualifier))
    return join_words((weight, lift.advice), between=". ")


def _list_newest(today: Today, printed: Sequence[PrintedCard]) -> tuple[NewestCard, ...]:
    """List what a container should have, and what was printed of it on request."""
    known = today.standing | {card.made.key for card in printed}
    cards: dict[str, Card] = {card.kind: card for key, card in today.cards.items() if key in known}
    return tuple(
        NewestCard(find_kind(kind).name, card.head.revision, card.head.check_letters)
        for kind, card in cards.items()
    )
