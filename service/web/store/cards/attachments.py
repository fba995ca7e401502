"""Paths that say what became of a printed card."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Path, Query, Response

from service.keeping.printing.attach import (
    Attached,
    ScannedCard,
    attach_card,
    attach_scanned,
    take_back,
)
from service.store.handles import Connection
from service.store.people.role import Role
from service.store.printed.runs import load_card
from service.store.printed.states import mark_spoiled
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheAsked
from service.web.store.cards.shapes import AttachedView, AttachmentBody, CardView, show_card
from service.web.store.once import Made, make_once

router = APIRouter(route_class=GatedRoute)

_CardNumber = Annotated[int, Path(ge=1, lt=2**31, examples=[1])]


@router.post(
    "/api/attachments",
    dependencies=[needs(Role.PRINT)],
    status_code=201,
    response_model=AttachedView,
)
def attach_by_scanning(body: AttachmentBody, asked: TheAsked) -> Response:
    """Mark a card as attached to the container that was scanned with it.

    A card on the wrong container is refused.
    """
    scanned = ScannedCard(body.card_of, body.revision, body.letters)

    def make(connection: Connection) -> Made:
        done = attach_scanned(
            connection, scanned, container_number=body.container_number, stamp=asked.stamp
        )
        return Made(_show(done))

    return make_once(asked, body.model_dump_json(), make)


@router.post(
    "/api/cards/{card}/attached",
    dependencies=[needs(Role.PRINT)],
    status_code=201,
    response_model=AttachedView,
)
def attach_by_number(card: _CardNumber, asked: TheAsked) -> Response:
    """Mark a printed card as attached; the one it replaces is withdrawn."""
    return make_once(
        asked,
        str(card),
        lambda connection: Made(_show(attach_card(connection, card, stamp=asked.stamp))),
    )


@router.post(
    "/api/cards/{card}/taken-back",
    dependencies=[needs(Role.PRINT)],
    status_code=201,
    response_model=CardView,
)
def take_attachment_back(
    card: _CardNumber,
    asked: TheAsked,
    replaced: Annotated[
        int | None, Query(ge=1, lt=2**31, description="The card it had replaced, on again.")
    ] = None,
) -> Response:
    """Take back that a card was attached: it waits again."""

    def make(connection: Connection) -> Made:
        done = take_back(connection, card, replaced=replaced, stamp=asked.stamp)
        return Made(show_card(done))

    return make_once(asked, f"{card} {replaced}", make)


@router.post(
    "/api/cards/{card}/spoiled",
    dependencies=[needs(Role.PRINT)],
    status_code=201,
    response_model=CardView,
)
def spoil_card(card: _CardNumber, asked: TheAsked) -> Response:
    """Mark a printed card as spoiled: it is on nothing, and never will be."""

    def make(connection: Connection) -> Made:
        mark_spoiled(connection, card, stamp=asked.stamp)
        return Made(show_card(load_card(connection, card)))

    return make_once(asked, str(card), make)


def _show(done: Attached) -> AttachedView:
    replaced = None if done.replaced is None else show_card(done.replaced)
    return AttachedView(card=show_card(done.card), replaced=replaced)
