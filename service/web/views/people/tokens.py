"""One's own tokens: what programs sign in with."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Form, Request, Response

from service.errors import ScopeError, UnstorableTextError, UserNameError
from service.keeping.people.tokens import make_token, revoke_token
from service.languages.saying import said
from service.sentence import Sentence
from service.store.people.role import Role
from service.store.people.tokens import Token, load_token, load_tokens
from service.store.people.users import load_user
from service.web.access.entrance import MOST_BODY_BYTES
from service.web.access.gate import GatedRoute, needs
from service.web.access.porter import TheReader
from service.web.access.reader import Reader, Way
from service.web.replies.refusals import Refusal, RefusedError
from service.web.store.asking import TheCounter
from service.web.store.counter import Counter
from service.web.store.people.sessions import refuse_without_session
from service.web.views.language.telling import tell_error
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.notice import Notice, go_to
from service.web.views.shell.page import show_page
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute, max_body_size=MOST_BODY_BYTES)

_NO_NAME = Sentence("Say in a few words what the program does, such as: nightly export.")
_NO_SCOPE = Sentence("Tick at least one kind of work.")


@router.get("/people/tokens", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def tokens(request: Request, counter: TheCounter, reader: TheReader) -> Response:
    """Show one's tokens."""
    return _show(request, counter, reader, FilledForm())


@router.post("/people/tokens", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def make(
    request: Request,
    acting: ThePageActing,
    reader: TheReader,
    name: Annotated[str, Form()] = "",
    scopes: Annotated[list[Role] | None, Form()] = None,
) -> Response:
    """Make a token and show it, this once."""
    refuse_without_session(reader)
    wanted = scopes or []
    try:
        with acting.counter.writing() as connection:
            made = make_token(connection, reader.name, name, wanted, stamp=acting.stamp)
    except (UserNameError, UnstorableTextError, ScopeError) as error:
        fault = ("name", said(_NO_NAME))
        if isinstance(error, ScopeError):
            fault = ("scopes", tell_error(error) if wanted else said(_NO_SCOPE))
        typed = {"name": name} | {f"scope-{role.value}": "yes" for role in wanted}
        form = FilledForm(typed, dict([fault]))
        return _show(request, acting.counter, reader, form)
    return show_page(request, "people/made_token.html", {"made": made}, status=201)


@router.post("/people/tokens/revoke", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def revoke(
    acting: ThePageActing, reader: TheReader, token: Annotated[int, Form(ge=1, lt=2**31)]
) -> Response:
    """Take one's token back for ever.

    Raises:
        RefusedError: When it is of somebody else.
    """
    with acting.counter.writing() as connection:
        if load_token(connection, token).user_name != reader.name:
            raise RefusedError(Refusal.NOT_ALLOWED, "The token is of somebody else.")
        name = revoke_token(connection, token, stamp=acting.stamp).name
    return go_to("/people/tokens", Notice(f"The token {name} does nothing any more."))


def _show(request: Request, counter: Counter, reader: Reader, form: FilledForm) -> Response:
    offered = [role for role in Role if reader.role is not None and reader.may(role)]
    values = {"tokens": _load_own(counter, reader), "offered": offered, "form": form}
    return show_page(request, "people/tokens.html", values, status=form.status)


def _load_own(counter: Counter, reader: Reader) -> tuple[Token, ...]:
    if reader.way is Way.THIS_MACHINE:
        return ()
    with counter.reading() as connection:
        return load_tokens(connection, load_user(connection, reader.name).user_id)
