"""The path of the reprint list: which attached cards no longer tell the truth, and why."""

from __future__ import annotations

import csv
import io
from typing import Annotated

from fastapi import APIRouter, Header, Query, Response
from pydantic import BaseModel

from service.errors import ServiceError
from service.findings import Finding, Where, make_finding
from service.keeping.reprints import OutOfDate, ReprintList, list_reprints_of
from service.sentence import Sentence
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.replies.accept import choose_media_type
from service.web.replies.problems import FindingView, show_findings
from service.web.replies.refusals import Refusal, RefusedError
from service.web.store.asking import TheCounter
from service.web.store.cards.shapes import CardView, show_card
from service.web.store.counter import Counter

router = APIRouter(route_class=GatedRoute)

_OFFERED = ("application/json", "text/csv")
_FORMULA = ("=", "+", "-", "@", "\t", "\r")
_HEADINGS = (
    "urgency",
    "container_number",
    "object_number",
    "location",
    "kind",
    "side",
    "printed",
    "why",
)


class ReasonView(BaseModel):
    """One reason in words for the office; what it concerns may not stand outside."""

    kind: str
    words: str
    object_number: str


class OutOfDateView(BaseModel):
    """An attached card that is wrong; `is_wanted` is false where it only has to come off.

    A tag names its object, and the container in which that lies now, which may be none.
    """

    container_number: str
    object_number: str
    kind: str
    side: int
    card: CardView
    location: list[str]
    urgency: str
    reasons: list[ReasonView]
    is_wanted: bool


class UnattachedView(BaseModel):
    """A card that a container should have and has not; `is_made` where one only waits."""

    container_number: str
    kind: str
    side: int
    is_made: bool


class ReprintsView(BaseModel):
    """All that is to be done about cards, the most urgent first, then in walking order."""

    reprints: list[OutOfDateView]
    not_attached: list[UnattachedView]
    findings: list[FindingView]


@router.get(
    "/api/reprints",
    dependencies=[needs(Role.VIEW)],
    response_model=ReprintsView,
    responses={200: {"content": {"text/csv": {}}}},
)
def reprints(
    counter: TheCounter,
    container: Annotated[
        str, Query(max_length=500, description="Only of this one: why it is listed, or is not.")
    ] = "",
    accept: Annotated[str, Header(max_length=1000)] = "*/*",
) -> Response:
    """List the attached cards to print again, with the reasons in words.

    Raises:
        RefusedError: When something else than JSON or CSV is asked for.
    """
    media_type = choose_media_type(accept, _OFFERED)
    if media_type is None:
        raise RefusedError(
            Refusal.NOT_ACCEPTABLE,
            Sentence("On offer are: {offered}.", offered=", ".join(_OFFERED)),
        )
    view = _show(_find(counter, container))
    if media_type == "text/csv":
        response = Response(_write_csv(view), media_type="text/csv; charset=utf-8")
        response.headers["Content-Disposition"] = 'attachment; filename="reprints.csv"'
    else:
        response = Response(view.model_dump_json(), media_type="application/json")
    response.headers["Vary"] = "Accept"
    return response


def _find(counter: Counter, container_number: str) -> ReprintList:
    if not container_number:
        return counter.list_reprints()
    with counter.measuring() as ruler, counter.reading() as connection:
        return list_reprints_of(connection, ruler, container_number)


def _show(found: ReprintList) -> ReprintsView:
    return ReprintsView(
        reprints=[_show_wrong(one) for one in found.out_of_date],
        not_attached=[
            UnattachedView.model_validate(one, from_attributes=True) for one in found.unattached
        ],
        findings=show_findings(
            [
                *(_tell_failed(Where(container_number=one), why) for one, why in found.failed),
                *(_tell_failed(Where(object_number=one), why) for one, why in found.failed_tags),
            ]
        ),
    )


def _tell_failed(where: Where, error: ServiceError) -> Finding:
    return make_finding("card-failed", where, error.sentence, advice=Sentence(error.advice))


def _show_wrong(wrong: OutOfDate) -> OutOfDateView:
    reprint = wrong.reprint
    return OutOfDateView(
        container_number=reprint.container_number,
        object_number=reprint.object_number,
        kind=reprint.kind,
        side=reprint.side,
        card=show_card(wrong.printed),
        location=list(reprint.location),
        urgency=reprint.urgency.name.lower().replace("_", " "),
        reasons=[
            ReasonView(
                kind=change.kind.value, words=change.words, object_number=change.object_number
            )
            for change in reprint.changes
        ],
        is_wanted=wrong.today is not None,
    )


def _write_csv(view: ReprintsView) -> str:
    """Write one row a card (RFC 4180); a cell never begins as a formula would."""
    text = io.StringIO()
    writer = csv.writer(text)
    writer.writerow(_HEADINGS)
    for one in view.reprints:
        card = one.card
        row = (
            one.urgency,
            one.container_number,
            one.object_number,
            " / ".join(one.location),
            card.kind,
            str(card.side),
            card.letters if card.object_number else f"r{card.revision} {card.letters}",
            "; ".join(reason.words for reason in one.reasons),
        )
        writer.writerow([f"'{cell}" if cell.startswith(_FORMULA) else cell for cell in row])
    return text.getvalue()
