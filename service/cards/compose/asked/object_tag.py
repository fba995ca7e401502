"""The object tag: tied to an object, so that it is known wherever it lies, hazards included."""

from __future__ import annotations

from dataclasses import replace

from service.cards.card import ObjectTag
from service.cards.compose.head import object_address
from service.cards.compose.objects import name_outside
from service.cards.compose.warn import advise_object, gather_cautions, gather_hazards
from service.cards.fingerprint import seal_card
from service.cards.parts import Head, Warn
from service.cards.words import write_questions
from service.contents.packing import PackedObject, Packing
from service.handling.lifting import LIGHT_ADVICE, NO_ADVICE, LiftAdvice
from service.records.record import Museum, ObjectRecord, PlaceRecord, Questions


def compose_object_tags(packing: Packing, museum: Museum) -> tuple[ObjectTag, ...]:
    """Word a tag for each object of a packing; one that lies in several places gets one.

    An object without a record gets none: there is nothing to say of it.
    """
    first: dict[str, ObjectRecord] = {}
    for packed in packing.everything:
        if packed.known:
            first.setdefault(packed.record.object_number, packed.record)
    return tuple(compose_object_tag(record, museum) for record in first.values())


def compose_object_tag(record: ObjectRecord, museum: Museum) -> ObjectTag:
    """Word the tag of one object from its own record alone, packed or not."""
    alone = PackedObject(record, PlaceRecord(record.object_number))
    head = Head(
        container_number="",
        kind_words="",
        title="",
        museum=museum.name,
        location="",
        address=object_address(alone, museum),
        questions=write_questions(Questions(), museum.questions),
        revision=0,
    )
    tag = ObjectTag(
        head=head,
        object_number=record.object_number,
        former_numbers=record.former_numbers,
        title=name_outside(alone),
        lift=_advise_lift(alone, museum),
        hazards=tuple(map(_of_this_object, gather_hazards([alone]))),
        cautions=tuple(map(_of_this_object, gather_cautions([alone]))),
    )
    return seal_card(tag, dated=False)


def _of_this_object(warn: Warn) -> Warn:
    """Let a warning name no object: the tag is on it."""
    return replace(warn, pointers=(), unmarked=())


def _advise_lift(packed: PackedObject, museum: Museum) -> LiftAdvice:
    """Advise as for a container; what is known to be light needs no words on a small tag."""
    lift = advise_object(packed, museum)
    return NO_ADVICE if lift.advice == LIGHT_ADVICE else lift
