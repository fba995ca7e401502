"""What somebody who scans a printed card is told: whether it still holds, and what changed.

Only what may stand outside: no contents, no location, and of discreet objects no more than a card
shows.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from service.cards.card import Card, ObjectTag
from service.cards.changes.list_changes import list_changes
from service.cards.compose.warn import warn_outside
from service.cards.fingerprint import check_letters, fingerprint_card
from service.cards.kept_text import card_from_text
from service.cards.kinds import find_kind
from service.cards.parts import Warn
from service.cards.standing import Answer, Fate, KnownCard, Standing, judge, judge_scan
from service.cards.words import join_words, write_questions
from service.contents.packing import Packing
from service.handling.lifting import LiftAdvice
from service.keeping.scan.inside import NOTHING_INSIDE, Inside, open_inside
from service.keeping.tags.today import compose_tag
from service.keeping.today import Today, compose_today
from service.pages.ruler import Ruler
from service.records.record import Museum
from service.sentence import Sentence, join_sentences
from service.store.handles import Connection
from service.store.printed.card import PrintedCard
from service.store.printed.runs import find_printed, load_attached_tags


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
        container_number: As it was scanned; that of an object where its tag was.
        standing: Current, out of date, withdrawn or unknown, with a sentence.
        changes: What changed since the card was printed, the most urgent first.
        warns: Hazards and cautions as they are printed outside today.
        limits: What else is printed there: stacking, heavy end, handling notes.
        lift: How to lift it, as printed today.
        questions: Whom to ask.
        newest: The cards of the container as they would be printed now.
        inside: Contents and location, as far as the museum opens them to everybody.
        is_tag: Whether the number is that of an object.
        is_known: Whether there is anything of this number.
    """

    container_number: str
    standing: Standing
    changes: tuple[str, ...] = ()
    warns: tuple[Warn, ...] = ()
    limits: tuple[str, ...] = ()
    lift: str = ""
    questions: str = ""
    newest: tuple[NewestCard, ...] = ()
    inside: Inside = NOTHING_INSIDE
    is_tag: bool = False
    is_known: bool = True

    @property
    def warnings(self) -> tuple[str, ...]:
        """Everything that warns, a line each."""
        said = (join_words((warn.heading, warn.instruction), between=". ") for warn in self.warns)
        return (*said, *self.limits)


_UNKNOWN_CONTAINER = Standing(
    Answer.UNKNOWN,
    "This number is not known here. Do not rely on the card; ask before you open or lift.",
)

_NO_TAG = Standing(
    Answer.UNKNOWN,
    "No tag of this object is marked as attached. Compare it with the record before you rely on"
    " it.",
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
        return _answer_tag(connection, ruler, container_number)
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
        open_inside(packing, today.museum),
    )


def _answer_tag(connection: Connection, ruler: Ruler, object_number: str) -> ScanAnswer:
    """Answer for the tag of an object; a number nobody knows answers like any other."""
    tag = compose_tag(connection, ruler, object_number)
    if tag is None:
        return ScanAnswer(object_number, _UNKNOWN_CONTAINER, is_known=False)
    attached = load_attached_tags(connection, [object_number])
    return ScanAnswer(
        object_number,
        _judge_tag(tag, attached),
        _differ(attached, tag),
        (*tag.hazards, *tag.cautions),
        lift=_word_lift(tag.lift),
        questions=tag.head.questions,
        is_tag=True,
    )


def _judge_tag(tag: ObjectTag, attached: Sequence[PrintedCard]) -> Standing:
    """Judge the tag that is on the object; without one nobody knows which is in hand."""
    if not attached:
        return _NO_TAG
    content = card_from_text(attached[-1].made.content)
    return judge(fingerprint_card(content), fingerprint_card(tag), fate=Fate.ATTACHED)


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
    return _differ(scanned, today.cards.get(scanned[-1].made.key)) if scanned else ()


def _differ(printed: Sequence[PrintedCard], wanted: Card | None) -> tuple[str, ...]:
    """Say in words for the outside how the last of some cards differs from the one of today."""
    if not printed or wanted is None:
        return ()
    changes = list_changes(card_from_text(printed[-1].made.content), wanted)
    return tuple(dict.fromkeys(change.outside_words for change in changes))


def _say_handling(
    packing: Packing, museum: Museum
) -> tuple[tuple[Warn, ...], tuple[str, ...], str, str]:
    handling = warn_outside(packing, museum)
    questions = write_questions(packing.container.questions, museum.questions)
    warns = (*handling.hazards, *handling.cautions)
    return warns, handling.limits, _word_lift(handling.lift), questions


def _word_lift(lift: LiftAdvice) -> str:
    weight = join_sentences(f"{lift.figure_kg} kg" if lift.figure_kg else "", lift.qualifier)
    if weight and lift.advice:
        return Sentence("{weight}. {advice}", weight=weight, advice=Sentence(lift.advice))
    return weight or Sentence(lift.advice)


def _list_newest(today: Today, printed: Sequence[PrintedCard]) -> tuple[NewestCard, ...]:
    """List what a container should have, and what was printed of it on request."""
    known = today.standing | {card.made.key for card in printed}
    cards: dict[str, Card] = {card.kind: card for key, card in today.cards.items() if key in known}
    return tuple(
        NewestCard(find_kind(kind).name, card.head.revision, card.head.check_letters)
        for kind, card in cards.items()
    )
