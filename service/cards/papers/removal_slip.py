"""The removal slip: left in the gap, it says what is gone, to whom, and when it is due back."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from service.cards.compose.objects import compose_object
from service.cards.compose.warn import (
    advise_object,
    gather_cautions,
    gather_hazards,
    is_discreet,
)
from service.cards.parts import Handling, SecondWords, Warn
from service.cards.words import join_words, write_date, write_questions
from service.contents.packing import PackedObject
from service.printed import to_print
from service.records.record import ContainerRecord, Museum

NOT_OUTSIDE = to_print("see the records")
"""Stands for the reason where the object may not be spoken of outside."""


@dataclass(frozen=True, slots=True)
class Taken:
    """What was taken out: its slip, which parts, to whom, why, by whom and until when."""

    slip: int
    parts: tuple[str, ...]
    to_whom: str
    reason: str
    taken_by: str
    out_on: date
    due_back: date | None = None


@dataclass(frozen=True, slots=True)
class RemovalSlip:
    """What a slip says; `due_back`, `to_whom` and `reason` are "" where a line for a pen stands."""

    slip: str
    museum: str
    object_number: str
    name: str
    parts: str
    photo: str
    photo_words: str
    container_number: str
    place: str
    location: str
    to_whom: str
    taken_by: str
    out_on: str
    due_back: str
    reason: str
    handling: Handling
    questions: str
    second: SecondWords | None = None


def compose_removal_slip(
    packed: PackedObject, container: ContainerRecord, taken: Taken, museum: Museum
) -> RemovalSlip:
    """Word the slip of an object as it may be read by anybody who passes.

    Of a discreet object neither photo, name nor reason is told; its hazards say only to ask.
    """
    shown = compose_object(packed)
    place = packed.place
    reason = taken.reason if not is_discreet(packed) else NOT_OUTSIDE
    return RemovalSlip(
        slip=str(taken.slip),
        museum=museum.name,
        object_number=shown.object_number,
        name=shown.title,
        parts=join_words(taken.parts, between=", "),
        photo=shown.photo,
        photo_words=shown.photo_words,
        container_number=container.container_number,
        place=join_words(
            (to_print("layer {layer}", layer=place.layer), place.compartment), between=", "
        ),
        location=join_words(container.location, between=", ") if museum.show_location else "",
        to_whom=taken.to_whom,
        taken_by=taken.taken_by,
        out_on=write_date(taken.out_on),
        due_back=write_date(taken.due_back) if taken.due_back else "",
        reason=reason,
        handling=warn_of_object(packed, museum),
        questions=write_questions(container.questions, museum.questions),
    )


def warn_of_object(packed: PackedObject, museum: Museum) -> Handling:
    """Gather what must be known of one object, as it may be told outside.

    The hazards of the whole object travel with each part of it.
    """
    return Handling(
        lift=advise_object(packed, museum),
        hazards=tuple(map(_alone, gather_hazards([packed]))),
        cautions=tuple(map(_alone, gather_cautions([packed]))),
    )


def _alone(warn: Warn) -> Warn:
    """Take the number off a warning: it stands on a paper of this object alone."""
    return Warn(warn.mark, warn.heading, warn.instruction, urgency=warn.urgency)
