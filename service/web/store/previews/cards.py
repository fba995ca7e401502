"""Paths of pictures of a container's cards and of an object's tag, as the records say now."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated
from urllib.parse import quote, urlencode

from fastapi import APIRouter, Depends, Query, Response
from pydantic import BaseModel

from service.cards.kinds import LID_CARD, OBJECT_TAG
from service.errors import NotFoundError
from service.keeping.previews.cards import CardWish, lay_all, lay_card
from service.pipeline.options import card_key
from service.pipeline.previews.card import LaidCard, draw_card
from service.sentence import Sentence
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.replies.problems import FindingView, show_findings
from service.web.store.asking import ContainerNumber, ObjectNumber, TheCounter
from service.web.store.previews.picture import PICTURE, Looking, PageNumber, Paper, TheLooking

router = APIRouter(route_class=GatedRoute)

_Kind = Annotated[
    str, Query(max_length=100, description="A kind of /api/kinds.", examples=["end-label"])
]
_Side = Annotated[int, Query(ge=1, le=100, description="Only end labels have more than one.")]


@dataclass(frozen=True, slots=True)
class _CardPage:
    """Which card of a container is asked for, and which page of it."""

    kind: str
    side: int
    paper: str
    page: int


def _card_page(
    kind: _Kind = LID_CARD.code, side: _Side = 1, paper: Paper = "A4", page: PageNumber = 1
) -> _CardPage:
    return _CardPage(kind, side, paper, page)


class PreviewPage(BaseModel):
    """One page of a card: its finished size, and where its picture is to be had."""

    page: int
    size_mm: tuple[float, float]
    href: str


class PreviewCard(BaseModel):
    """A card as it would be printed now, and the stock that would be chosen for it."""

    kind: str
    side: int
    stock: str
    revision: int
    letters: str
    pages: list[PreviewPage]


class PreviewCards(BaseModel):
    """The cards a container always gets, in the order of reading, and what was noticed."""

    container_number: str
    cards: list[PreviewCard]
    findings: list[FindingView]


@router.get("/api/containers/{number:path}/previews", dependencies=[needs(Role.VIEW)])
def previews(number: ContainerNumber, counter: TheCounter, paper: Paper = "A4") -> PreviewCards:
    """List the cards a container would get now, with the pages of each; nothing is drawn yet."""
    with counter.previewing() as desk:
        cards, findings = lay_all(desk, number, paper=paper, today=counter.now().date())
    return PreviewCards(
        container_number=number,
        cards=[_show_card(number, card, paper) for card in cards],
        findings=show_findings(findings),
    )


@router.get(
    "/api/containers/{number:path}/preview",
    response_class=Response,
    responses=PICTURE,
    dependencies=[needs(Role.VIEW)],
)
def container_preview(
    number: ContainerNumber,
    asked: Annotated[_CardPage, Depends(_card_page)],
    looking: TheLooking,
) -> Response:
    """Draw a page of a container's card as it would be printed now; nothing is remembered.

    Raises:
        NotFoundError: When a container gets no such card.
    """
    if asked.kind == OBJECT_TAG.code:
        raise NotFoundError(asked.kind, what=Sentence("card of container {number}", number=number))
    return _picture(looking, CardWish(number, asked.kind, asked.side, asked.paper), asked.page)


@router.get(
    "/api/objects/{number:path}/preview",
    response_class=Response,
    responses=PICTURE,
    dependencies=[needs(Role.VIEW)],
)
def object_preview(
    number: ObjectNumber, looking: TheLooking, paper: Paper = "A4", page: PageNumber = 1
) -> Response:
    """Draw a page of an object's tag as it would be printed now; nothing is remembered."""
    return _picture(looking, CardWish(number, paper=paper), page)


def _picture(looking: Looking, wish: CardWish, page: int) -> Response:
    counter, width_px = looking.counter, looking.width_px
    with counter.previewing() as desk:
        laid = lay_card(desk, wish, today=counter.now().date())

        def draw() -> bytes:
            return draw_card(laid, page, width_px=width_px, workshop=desk.workshop)

        response = looking.answer(laid.tag(page, width_px=width_px), draw)
    response.headers["Underlid-Pages"] = str(len(laid.sizes))
    return response


def _show_card(number: str, laid: LaidCard, paper: str) -> PreviewCard:
    card = laid.fitted.card
    _, kind, side = card_key(card)
    asked = {"kind": kind, "side": side, "paper": paper}
    at = f"/api/containers/{quote(number)}/preview?"
    return PreviewCard(
        kind=kind,
        side=side,
        stock=laid.fitted.stock.name,
        revision=card.head.revision,
        letters=card.head.check_letters,
        pages=[
            PreviewPage(
                page=page,
                size_mm=(size.width_mm, size.height_mm),
                href=at + urlencode(asked | {"page": page}),
            )
            for page, size in enumerate(laid.sizes, start=1)
        ],
    )
