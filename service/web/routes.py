"""The paths of the API; each is a plain function that runs in a thread."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Depends, File, Header, Request, Response
from pydantic import BaseModel, Field

from service.cards.kinds import CARD_KINDS
from service.sentence import Sentence
from service.store.people.role import Role
from service.web.access.gate import OPEN, GatedRoute, needs
from service.web.access.handed import handed
from service.web.forms import PrintForm, receive
from service.web.press import Presses
from service.web.replies.accept import choose_media_type
from service.web.replies.prints import CHECK_PATH, OFFERED, Findings, Report, reply
from service.web.replies.problems import MEDIA_TYPE, list_problems, show_findings
from service.web.replies.refusals import Refusal, RefusedError
from service.web.stocks import router as stocks_router
from service.web.work import Choice, Done, Failed, Job

router = APIRouter(route_class=GatedRoute)
router.include_router(stocks_router)

_PROBLEMS: dict[int | str, dict[str, object]] = {
    status: {
        "description": "A problem, with its code and advice.",
        "content": {MEDIA_TYPE: {"schema": {"$ref": "#/components/schemas/Problem"}}},
    }
    for status in (400, 413, 422, 500, 503)
}
_PRINTED: dict[int | str, dict[str, object]] = {
    200: {
        "model": Report,
        "description": "What was asked for in Accept; a PDF without it.",
        "content": {name: {} for name in OFFERED},
    },
    406: _PROBLEMS[422],
}


class Health(BaseModel):
    """Whether the service answers."""

    status: str


class KindView(BaseModel):
    """A kind of card and where it goes."""

    code: str
    name: str
    where: str
    sticky: bool
    standing: bool = Field(description="Whether it is printed without being asked for.")


class ProblemView(BaseModel):
    """A problem that can occur: its status and what to do."""

    code: str
    status: int
    advice: str


class FailedError(Exception):
    """Raised when a job left nothing to hand over; holds the error and what was noticed."""

    def __init__(self, failed: Failed) -> None:
        """Keep what failed."""
        self.failed = failed
        super().__init__(str(failed.error))


def _presses(request: Request) -> Presses:
    presses = handed(request, "presses")
    if not isinstance(presses, Presses):
        raise TypeError(type(presses))
    return presses


ThePresses = Annotated[Presses, Depends(_presses)]


@router.get("/health", dependencies=[OPEN])
def health() -> Health:
    """Say that the service answers, also while it prints."""
    return Health(status="ok")


@router.get("/api/kinds", dependencies=[needs(Role.VIEW)])
def kinds() -> list[KindView]:
    """List the kinds of card."""
    return [
        KindView(
            code=kind.code,
            name=kind.name,
            where=kind.where,
            sticky=kind.sticky,
            standing=kind.standing,
        )
        for kind in CARD_KINDS
    ]


@router.get("/api/problems", dependencies=[needs(Role.VIEW)])
def problems() -> list[ProblemView]:
    """List every problem a reply can name, by its code."""
    return [
        ProblemView(code=code, status=status, advice=advice)
        for code, (status, advice) in list_problems().items()
    ]


@router.post(
    "/api/render",
    dependencies=[needs(Role.VIEW)],
    responses=_PRINTED | _PROBLEMS,
    response_class=Response,
)
def render(
    form: Annotated[PrintForm, File()],
    presses: ThePresses,
    accept: Annotated[str, Header(max_length=1000)] = "*/*",
) -> Response:
    """Print cards: a proven PDF, a picture of a sheet, all files, or only what was noticed.

    `application/pdf` and `image/png` need exactly one kind and stock; `application/zip` and
    `multipart/mixed` hold every file and the findings; `application/json` names the files.
    Nothing of it is kept but thumbnails.
    """
    media_type = _media_type(accept)
    choice = _checked(form.to_choice())
    picture = form.to_picture() if media_type == "image/png" else None
    with receive(form, choice, picture, scratch=presses.scratch_folder) as job:
        return reply(_do(job, presses), media_type, page=form.page)


@router.post(CHECK_PATH, dependencies=[needs(Role.VIEW)], responses=_PROBLEMS)
def check(form: Annotated[PrintForm, File()], presses: ThePresses) -> Findings:
    """Say everything that is noticed in records, packings, photos and the fit.

    It takes what printing takes; all containers are looked at, whatever is chosen.
    """
    _checked(form.to_choice())
    with receive(form, scratch=presses.scratch_folder) as job:
        return Findings(findings=show_findings(_do(job, presses).findings))


def _media_type(accept: str) -> str:
    """Choose what to answer with.

    Raises:
        RefusedError: When nothing that is accepted is on offer.
    """
    media_type = choose_media_type(accept, OFFERED)
    if media_type is None:
        raise RefusedError(
            Refusal.NOT_ACCEPTABLE, Sentence("On offer are: {offered}.", offered=", ".join(OFFERED))
        )
    return media_type


def _checked(choice: Choice) -> Choice:
    """Refuse unknown kinds, stocks and positions before any photo is touched."""
    choice.to_options()
    return choice


def _do(job: Job, presses: Presses) -> Done:
    answer = presses.run(job)
    if isinstance(answer, Failed):
        raise FailedError(answer)
    return answer
