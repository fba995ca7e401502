"""The end label: the number to be read from the aisle, and what the hands must know first."""

from __future__ import annotations

from dataclasses import replace

from service.cards.card import EndLabel
from service.cards.compose.head import compose_head
from service.cards.compose.warn import warn_outside
from service.cards.fingerprint import seal_card
from service.cards.words import count
from service.contents.packing import Packing
from service.handling.cautions import CAUTIONS
from service.records.record import ContainerKind, Museum

SIDES = {ContainerKind.BOX: 2, ContainerKind.TUBE: 2}
"""Boxes and tubes get a label on two opposite ends; everything else has one face to the aisle."""


def compose_end_labels(packing: Packing, museum: Museum) -> tuple[EndLabel, ...]:
    """Word the end labels of a container, one for each side that gets one.

    An end label stays true until the container itself changes, so its address carries no revision.
    """
    handling = warn_outside(packing, museum)
    sides = SIDES.get(packing.container.kind, 1)
    names = {entry.name for entry in CAUTIONS.values() if entry.whole_container}
    cautions = tuple(warn for warn in handling.cautions if warn.heading in names)
    return tuple(
        seal_card(
            EndLabel(
                head=compose_head(packing, museum),
                # A label has no room for the reason, so that a change of it makes none wrong.
                lift=replace(handling.lift, reason=""),
                marks=(*handling.hazards, *cautions),
                count_words=count(len(packing.everything), "object"),
                side=side,
                sides=sides,
            ),
            dated=False,
        )
        for side in range(1, sides + 1)
    )
