"""The answer to a scanned card: for a program as JSON, for a phone as one small page.

Whoever stands before the shelf sees at once whether the card still holds, what can hurt and whom
to ask; contents and location only where the museum opens them. A number that is not known answers
like any other.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Annotated

from fastapi import APIRouter, Depends, Header, Path, Query, Request, Response

from service.cards.standing import Answer
from service.keeping.scan import ScanAnswer, answer_scan
from service.keeping.scan.inside import see_inside
from service.sentence import Sentence
from service.web.access.gate import OPEN, GatedRoute
from service.web.access.handed import handed
from service.web.access.limit import Limit
from service.web.replies.accept import choose_media_type
from service.web.replies.refusals import Refusal, RefusedError
from service.web.store.asking import TheCounter
from service.web.views.desk.walking import read_held, read_walk
from service.web.views.language.interpreter import VARY
from service.web.views.scan.frame import show_small
from service.web.views.scan.inside import may_go_in, may_see_inside
from service.web.views.scan.marks import draw_mark
from service.web.views.scan.shapes import ScanView, show_answer
from service.web.views.shell.addresses import page_of_container, page_of_object

router = APIRouter(route_class=GatedRoute)

_OFFERED = ("application/json", "text/html")
_LONGEST = 20
_SHAPES = {
    Answer.CURRENT: "tick",
    Answer.OUT_OF_DATE: "warning",
    Answer.WITHDRAWN: "cross",
    Answer.UNKNOWN: "question",
}
"""How an answer looks: by its word and by its shape, never by colour alone."""


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
        raise RefusedError(
            Refusal.NOT_ACCEPTABLE,
            Sentence("On offer are: {offered}.", offered=", ".join(_OFFERED)),
        )
    with counter.measuring() as ruler, counter.reading() as connection:
        answer = answer_scan(
            connection, ruler, card.number, revision=card.revision, letters=card.letters
        )
        if answer.is_known and not answer.is_tag and may_see_inside(request):
            answer = replace(answer, inside=see_inside(connection, card.number))
    is_page = media_type == "text/html"
    response = _as_page(request, answer, card) if is_page else _as_json(answer)
    response.headers["Vary"] = f"Accept, {VARY}"
    return response


def _refuse_crowd(request: Request) -> None:
    """Turn away an address that tries number after number.

    Raises:
        RefusedError: When it asks too often.
    """
    limit = handed(request, "scan_limit")
    address = request.client.host if request.client else ""
    if isinstance(limit, Limit) and not limit.allows(address):
        raise RefusedError(Refusal.TOO_OFTEN, "At most 60 scans a minute are answered.")


def _as_json(answer: ScanAnswer) -> Response:
    return Response(show_answer(answer).model_dump_json(), media_type="application/json")


def _as_page(request: Request, answer: ScanAnswer, card: ScannedCard) -> Response:
    page_of = page_of_object if answer.is_tag else page_of_container
    goes_in = answer.is_known and may_go_in(request)
    values = {
        "answer": answer,
        "card": card,
        "shape": _SHAPES[answer.standing.answer],
        "draw_mark": draw_mark,
        "page": page_of(answer.container_number) if goes_in else "",
        "walks": goes_in and not answer.is_tag and read_walk(request) is not None,
        "held": read_held(request),
    }
    return show_small(request, "scan/answer.html", values)
