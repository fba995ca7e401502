"""Under which name changes are kept, and in which language pages are read."""

from __future__ import annotations

from typing import Annotated
from urllib.parse import quote

from fastapi import APIRouter, Form, Request, Response

from service.languages.page_words import list_page_languages
from service.languages.saying import said, say
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.access.porter import reader_of
from service.web.replies.refusals import RefusedError
from service.web.store.asking import read_actor
from service.web.views.language.interpreter import LANGUAGE_COOKIE
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.notice import Notice, go_to
from service.web.views.shell.page import show_page
from service.web.views.shell.reader import NAME_COOKIE, read_reader

router = APIRouter(route_class=GatedRoute)

_A_YEAR_SECONDS = 365 * 24 * 3600
_PAGE = "start/you.html"
LANGUAGES = {"en": "English", "cy": "Cymraeg", "fr": "Français"}
"""Languages by what they call themselves."""


@router.get("/you", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def you(request: Request) -> Response:
    """Ask for name and language."""
    reader = read_reader(request)
    form = FilledForm({"name": reader.name, "language": request.cookies.get(LANGUAGE_COOKIE, "")})
    return _show(request, form)


@router.post("/you", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def keep_you(
    request: Request,
    name: Annotated[str, Form(max_length=500)] = "",
    language: Annotated[str, Form(max_length=10)] = "",
) -> Response:
    """Keep both in this browser; whoever has signed in has a name already."""
    chosen = language if language in list_page_languages() else ""
    if reader_of(request).is_signed_in:
        response = go_to("/you", Notice(say("The language is kept in this browser.")))
        _keep(response, LANGUAGE_COOKIE, chosen)
        return response
    try:
        actor = read_actor(quote(name))
    except RefusedError as error:
        typed = {"name": name, "language": language}
        return _show(request, FilledForm(typed, {"name": said(error.detail)}))
    response = go_to("/", Notice(say("Your changes are kept under the name {name}.", name=actor)))
    _keep(response, NAME_COOKIE, quote(actor))
    _keep(response, LANGUAGE_COOKIE, chosen)
    return response


def _keep(response: Response, cookie: str, value: str) -> None:
    response.set_cookie(
        cookie, value, max_age=_A_YEAR_SECONDS, httponly=True, samesite="strict", path="/"
    )


def _show(request: Request, form: FilledForm) -> Response:
    offered = [(code, LANGUAGES.get(code, code)) for code in list_page_languages()]
    return show_page(request, _PAGE, {"form": form, "languages": offered}, status=form.status)
