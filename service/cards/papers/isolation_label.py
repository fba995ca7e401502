"""The isolation label: on whatever came in or has pests, until somebody says otherwise."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date

from service.cards.compose.objects import compose_object
from service.cards.compose.warn import warn_outside
from service.cards.papers.removal_slip import warn_of_object
from service.cards.parts import Handling, SecondWords
from service.cards.words import KIND_WORDS, write_date, write_questions
from service.contents.packing import PackedObject, Packing
from service.handling.lifting import LiftAdvice
from service.printed import to_print
from service.records.record import Museum, Questions

INCOMING = to_print("Not in the records yet")
_UNKNOWN_LIFT = LiftAdvice("", to_print("Weight not known"), to_print("Weigh before lifting."))


@dataclass(frozen=True, slots=True)
class Isolation:
    """Since when something is kept apart, until when if that is known, why and by whom."""

    since: date
    until: date | None
    why: str
    isolated_by: str


@dataclass(frozen=True, slots=True)
class IsolationLabel:
    """What a label says; `until` and `why` are "" where a line for a pen stands.

    `is_recorded` is False for what has just come in: nothing is known of its hazards.
    """

    number: str
    title: str
    museum: str
    since: str
    until: str
    why: str
    isolated_by: str
    handling: Handling
    questions: str
    is_recorded: bool = True
    second: SecondWords | None = None


def label_container(packing: Packing, isolation: Isolation, museum: Museum) -> IsolationLabel:
    """Word the label of a container."""
    container = packing.container
    title = container.title or KIND_WORDS[container.kind]
    handling = warn_outside(packing, museum)
    thing = _Thing(container.container_number, title, handling, container.questions)
    return _compose(thing, isolation, museum)


def label_object(packed: PackedObject, isolation: Isolation, museum: Museum) -> IsolationLabel:
    """Word the label of one object; of a discreet one the title is not told."""
    shown = compose_object(packed)
    thing = _Thing(shown.object_number, shown.title, warn_of_object(packed, museum))
    return _compose(thing, isolation, museum)


def label_incoming(number: str, isolation: Isolation, museum: Museum) -> IsolationLabel:
    """Word the label of something that is in no record yet."""
    thing = _Thing(number, INCOMING, Handling(_UNKNOWN_LIFT))
    return replace(_compose(thing, isolation, museum), is_recorded=False)


@dataclass(frozen=True, slots=True)
class _Thing:
    """What is isolated: its number, title and warnings, and whom its own record says to ask."""

    number: str
    title: str
    handling: Handling
    questions: Questions = Questions()  # noqa: RUF009 - it is frozen


def _compose(thing: _Thing, isolation: Isolation, museum: Museum) -> IsolationLabel:
    return IsolationLabel(
        number=thing.number,
        title=thing.title,
        museum=museum.name,
        since=write_date(isolation.since),
        until=write_date(isolation.until) if isolation.until else "",
        why=isolation.why,
        isolated_by=isolation.isolated_by,
        handling=thing.handling,
        questions=write_questions(thing.questions, museum.questions),
    )
