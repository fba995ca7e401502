"""One card of a container, or the tag of an object, as the records say at this moment."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from service.cards.kinds import OBJECT_TAG, find_kind
from service.errors import ContentsError, NotFoundError
from service.findings import Finding
from service.keeping.desk import Desk
from service.keeping.printing.wanted import Wanted, load_wanted
from service.pipeline.options import PrintOptions
from service.pipeline.previews.card import LaidCard, draw_card, lay_cards
from service.sentence import Sentence
from service.store.load_records import load_container
from service.store.open import reading

_FAILED = "card-failed"


@dataclass(frozen=True, slots=True)
class CardWish:
    """Which card is to be shown, and on which paper its size is chosen.

    Attributes:
        number: That of the container, or of the object where its own tag is meant.
        kind: The code of the kind.
        side: Counted from 1; only end labels have more than one.
        paper: "A4" or "Letter".
    """

    number: str
    kind: str = OBJECT_TAG.code
    side: int = 1
    paper: str = "A4"


def lay_card(desk: Desk, wish: CardWish, *, today: date) -> LaidCard:
    """Lay a card out as a print run would: worded from the store and fitted, but not yet inked.

    Raises:
        NotFoundError: When there is no such container or object, or it gets no such card.
        UnknownCardKindError: When there is no such kind.
        ContentsError: When the card cannot be worded or fits on no stock.
    """
    kind = find_kind(wish.kind)
    key = (wish.number, kind.code, wish.side)
    options = PrintOptions(only=frozenset({key}), paper=wish.paper, today=today)
    cards, findings = _lay(desk, load_wanted(desk, options))
    if cards:
        return cards[0]
    if kind != OBJECT_TAG:
        with reading(desk.engine) as connection:
            load_container(connection, wish.number)
    for finding in findings:
        if finding.code == _FAILED:
            raise ContentsError(finding.message)
    named = f"{kind.code}, side {wish.side}"
    raise NotFoundError(named, what=Sentence("card of {number}", number=wish.number))


def lay_all(
    desk: Desk, container_number: str, *, paper: str = "A4", today: date
) -> tuple[tuple[LaidCard, ...], tuple[Finding, ...]]:
    """Lay out every card that a container always gets; one that cannot be is a finding.

    Raises:
        NotFoundError: When there is no such container.
    """
    with reading(desk.engine) as connection:
        load_container(connection, container_number)
    options = PrintOptions(containers=frozenset({container_number}), paper=paper, today=today)
    return _lay(desk, load_wanted(desk, options))


def preview_card(
    desk: Desk, wish: CardWish, *, page: int = 1, width_px: int = 900, today: date
) -> bytes:
    """Give a page of a card as PNG, so many dots wide.

    Raises:
        NotFoundError: When there is no such container, object, card or page.
        UnknownCardKindError: When there is no such kind.
        ContentsError: When the card cannot be worded, fitted or inked.
        JobError: When its page cannot be drawn.
    """
    laid = lay_card(desk, wish, today=today)
    return draw_card(laid, page, width_px=width_px, workshop=desk.workshop)


def _lay(desk: Desk, wanted: Wanted) -> tuple[tuple[LaidCard, ...], tuple[Finding, ...]]:
    return lay_cards(wanted.collection, wanted.photos, wanted.options, desk.workshop)
