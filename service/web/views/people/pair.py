"""What a telephone shows to be signed in: opening the page changes nothing, its button does."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated

from fastapi import APIRouter, Form, Request, Response

from service.errors import PairingError, SignInError
from service.keeping.people.pairing import finish_pairing
from service.languages.saying import say
from service.web.access.cookies import is_in_clear, set_session
from service.web.access.entrance import MOST_BODY_BYTES, TheEntrance
from service.web.access.gate import OPEN, GatedRoute
from service.web.replies.refusals import RefusedError
from service.web.store.asking import TheCounter
from service.web.views.people.sign_in import device_of
from service.web.views.people.telling import fill_again, show_refused
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.notice import Notice, go_to
from service.web.views.shell.page import show_page

router = APIRouter(route_class=GatedRoute, max_body_size=MOST_BODY_BYTES)

_PAGE = "people/pair.html"
_LONGEST_CODE = 100


@router.get("/pair", include_in_schema=False, dependencies=[OPEN])
def ask_code(request: Request) -> Response:
    """Ask for the code that another device shows."""
    return show_page(request, _PAGE, {"form": FilledForm(), **_values(request)})


@router.get("/pair/{code}", include_in_schema=False, dependencies=[OPEN])
def show_code(request: Request, code: str) -> Response:
    """Show the code of the address with the button that uses it."""
    form = FilledForm({"code": code[:_LONGEST_CODE]})
    return show_page(request, _PAGE, {"form": form, **_values(request)})


@router.post("/pair", include_in_schema=False, dependencies=[OPEN])
def pair(
    request: Request,
    counter: TheCounter,
    entrance: TheEntrance,
    code: Annotated[str, Form(max_length=_LONGEST_CODE)] = "",
) -> Response:
    """Use the code up, and go on to packing."""
    typed = {"code": code}
    try:
        entrance.count("")
        with counter.writing() as connection:
            signed = finish_pairing(connection, code, device_of(request), now=counter.now())
    except RefusedError as refused:
        return show_refused(request, _PAGE, _values(request), typed, refused=refused)
    except (PairingError, SignInError):
        # A lock is not told to whoever holds a code.
        form = fill_again(typed, PairingError())
        values = {"form": form, **_values(request)}
        return show_page(request, _PAGE, values, status=form.status)
    response = go_to(
        "/pack", Notice(say("This phone is signed in as {name}.", name=signed.user.name))
    )
    set_session(request, response, signed.secret)
    return response


def _values(request: Request) -> Mapping[str, object]:
    return {"in_clear": is_in_clear(request)}
