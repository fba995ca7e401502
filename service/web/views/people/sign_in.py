"""Signing in and out."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated

from fastapi import APIRouter, Form, Query, Request, Response
from pydantic import BaseModel, Field

from service.errors import SignInError, UnstorableTextError
from service.keeping.people.signing_in import SignIn, sign_in, sign_out
from service.languages.saying import say
from service.store.people.role import Role
from service.store.people.users import has_users
from service.web.access.cookies import clear_session, is_in_clear, set_session
from service.web.access.entrance import MOST_BODY_BYTES, TheEntrance
from service.web.access.gate import OPEN, GatedRoute, needs
from service.web.access.porter import TheReader
from service.web.replies.refusals import RefusedError
from service.web.store.asking import TheCounter
from service.web.store.counter import Counter
from service.web.store.people.sessions import refuse_without_session
from service.web.views.people.telling import fill_again, show_refused
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.notice import Notice, go_to
from service.web.views.shell.page import show_page

router = APIRouter(route_class=GatedRoute, max_body_size=MOST_BODY_BYTES)

_PAGE = "people/sign_in.html"
_START = "/"


class SignInForm(BaseModel):
    """Name and password as they were typed, and the page to go on with."""

    name: str = ""
    password: str = Field(default="", repr=False)
    to: str = _START


@router.get("/sign-in", include_in_schema=False, dependencies=[OPEN])
def ask(request: Request, counter: TheCounter, to: Annotated[str, Query()] = _START) -> Response:
    """Ask for name and password."""
    form = FilledForm({"to": read_way_back(to)})
    return show_page(request, _PAGE, {"form": form, **_values(request, counter)})


@router.post("/sign-in", include_in_schema=False, dependencies=[OPEN])
def enter(
    request: Request,
    counter: TheCounter,
    entrance: TheEntrance,
    sent: Annotated[SignInForm, Form()],
) -> Response:
    """Begin a session and go back to where somebody came from."""
    way_back = read_way_back(sent.to)
    typed = {"name": sent.name, "to": way_back}
    asked = SignIn(sent.name, sent.password, device_of(request))
    try:
        entrance.count(sent.name)
        signed = sign_in(counter.engine, asked, now=counter.now())
    except RefusedError as refused:
        return show_refused(request, _PAGE, _values(request, counter), typed, refused=refused)
    except (SignInError, UnstorableTextError):
        # A name that nobody could have is answered as one that nobody has.
        form = fill_again(typed, SignInError())
        values = {"form": form, **_values(request, counter)}
        return show_page(request, _PAGE, values, status=form.status)
    response = go_to(way_back)
    set_session(request, response, signed.secret)
    return response


@router.post("/sign-out", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def leave(request: Request, counter: TheCounter, reader: TheReader) -> Response:
    """End the session of this browser."""
    refuse_without_session(reader)
    with counter.writing() as connection:
        sign_out(connection, reader.secret)
    response = go_to("/sign-in", Notice(say("You are signed out.")))
    clear_session(request, response)
    return response


def read_way_back(to: str) -> str:
    """Read where somebody wants to go; what is no path of this service is the first page."""
    is_path = to.startswith("/") and not to.startswith("//")
    # Browsers take a backslash for a slash and drop what cannot be seen (WHATWG URL standard).
    return to if is_path and to.isprintable() and "\\" not in to else _START


def device_of(request: Request) -> str:
    """Give what the browser calls itself."""
    return request.headers.get("user-agent", "")


def _values(request: Request, counter: Counter) -> Mapping[str, object]:
    with counter.reading() as connection:
        anybody = has_users(connection)
    return {"anybody": anybody, "in_clear": is_in_clear(request)}
