"""The answer to a scanned card: for a program as JSON, for a phone as one small page.

Whoever stands before the shelf sees at once whether the card still holds, what can hurt and whom
to ask; neither contents nor location. A number that is not known answers like any other.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from fastapi import APIRouter, Depends, Header, Path, Query, Request, Response
from pydantic import BaseModel

from service.cards.standing import Answer
from service.keeping.scan import ScanAnswer, answer_scan
from service.web.access.gate import OPEN, GatedRoute
from service.web.access.limit import Limit
from service.web.replies.accept import choose_media_type
from service.web.replies.refusals import Refusal, RefusedError
from service.web.store.asking import TheCounter
from service.web.views.templates import show_view

router = APIRouter(route_class=GatedRoute)

_OFFERED = ("application/json", "text/html")
_LONGEST = 20


@dataclass(frozen=True, slots=True)
class _Sign:
    """How an answer looks: by its word and by its shape, never by colour alone."""

    word: str
    shape: str


_SIGNS = {
    Answer.CURRENT: _Sign("Current", "tick"),
    Answer.OUT_OF_DATE: _Sign("Out of date", "warning"),
    Answer.WITHDRAWN: _Sign("Withdrawn", "cross"),
    Answer.UNKNOWN: _Sign("Unknown", "question"),
}


class NewestView(BaseModel):
    """A card as it would be printed now."""

    kind: str
    revision: int
    letters: str


class ScanView(BaseModel):
    """Whether a scanned card still holds, and what may be known outside."""

    container_number: str
    answer: Answer
    sentence: str
    changes: list[str]
    warnings: list[str]
    lift: str
    questions: str
    newest: list[NewestView]


class ScannedCard:
    """What the symbol of a card says."""

    def __init__(
        self,
        number: Annotated[str, Path(max_length=500, examples=["B-027"])],
        r: Annotated[
            str, Query(max_length=200, description="The revision on the card.", examples=["1"])
        ] = "",
        k: Annotated[
            str, Query(max_length=200, description="The check letters on it.", examples=["HNVG"])
        ] = "",
    ) -> None:
        """Read number, revision and letters; a revision that is none counts as not there."""
        self.number = number
        is_count = r.isascii() and r.isdigit() and len(r) < _LONGEST
        self.revision = int(r) if is_count else None
        self.letters = k[:_LONGEST]


@router.get(
    "/c/{number:path}",
    dependencies=[OPEN],
    response_model=ScanView,
    responses={200: {"content": {"text/html": {}}}},
)
def scan(
    request: Request,
    counter: TheCounter,
    card: Annotated[ScannedCard, Depends()],
    accept: Annotated[str, Header(max_length=1000)] = "*/*",
) -> Response:
    """Say whether the card in your hand still holds; anybody may ask, 60 times a minute.

    Raises:
        RefusedError: When an address asks too often, or for what is not on offer.
    """
    _refuse_crowd(request)
    media_type = choose_media_type(accept, _OFFERED)
    if media_type is None:
        raise RefusedError(Refusal.NOT_ACCEPTABLE, f"On offer are: {', '.join(_OFFERED)}.")
    with counter.measuring() as ruler, counter.reading() as connection:
        answer = answer_scan(
            connection, ruler, card.number, revision=card.revision, letters=card.letters
        )
    response = _as_page(answer) if media_type == "text/html" else _as_json(answer)
    response.headers["Vary"] = "Accept"
    return response


def _refuse_crowd(request: Request) -> None:
    """Turn away an address that tries number after number.

    Raises:
        RefusedError: When it asks too often.
    """
    limit = request.app.state.scan_limit
    address = request.client.host if request.client else ""
    if isinstance(limit, Limit) and not limit.allows(address):
        raise RefusedError(Refusal.TOO_OFTEN, "At most 60 scans a minute are answered.")


def _as_json(answer: ScanAnswer) -> Response:
    return Response(_show(answer).model_dump_json(), media_type="application/json")


def _as_page(answer: ScanAnswer) -> Response:
    sign = _SIGNS[answer.standing.answer]
    return show_view("scan.html", {"answer": answer, "word": sign.word, "shape": sign.shape})


def _show(answer: ScanAnswer) -> ScanView:
    return ScanView(
        container_number=answer.container_number,
        answer=answer.standing.answer,
        sentence=answer.standing.sentence,
        changes=list(answer.changes),
        warnings=list(answer.warnings),
        lift=answer.lift,
        questions=answer.questions,
        newest=[
            NewestView(kind=card.kind, revision=card.revision, letters=card.letters)
            for card in answer.newest
        ],
    )
