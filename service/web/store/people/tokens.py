"""Paths of tokens: what programs sign in with."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Path

from service.keeping.people.tokens import make_token, revoke_token
from service.store.people.role import Role
from service.store.people.tokens import load_token, load_tokens
from service.store.people.users import load_user
from service.web.access.gate import GatedRoute, needs
from service.web.access.porter import TheReader
from service.web.replies.refusals import Refusal, RefusedError
from service.web.store.asking import TheActing, TheCounter
from service.web.store.people.sessions import refuse_without_session
from service.web.store.people.shapes import (
    MadeTokenView,
    TokenBody,
    TokensView,
    TokenView,
    show_token,
)

router = APIRouter(route_class=GatedRoute)


@router.get("/api/tokens", dependencies=[needs(Role.VIEW)])
def tokens(counter: TheCounter, reader: TheReader) -> TokensView:
    """List one's own tokens; a manager sees those of everybody."""
    with counter.reading() as connection:
        everybody = reader.may(Role.MANAGE)
        owner = None if everybody else load_user(connection, reader.name).user_id
        return TokensView(tokens=[show_token(each) for each in load_tokens(connection, owner)])


@router.post("/api/tokens", dependencies=[needs(Role.VIEW)], status_code=201)
def make(body: TokenBody, acting: TheActing, reader: TheReader) -> MadeTokenView:
    """Make a token of one's own; its secret is in this reply and never again."""
    refuse_without_session(reader)
    with acting.counter.writing() as connection:
        made = make_token(connection, reader.name, body.name, body.scopes, stamp=acting.stamp)
    return MadeTokenView(token=show_token(made.token), secret=made.secret)


@router.delete("/api/tokens/{token}", dependencies=[needs(Role.VIEW)])
def revoke(
    token: Annotated[int, Path(ge=1, lt=2**31, examples=[1])], acting: TheActing, reader: TheReader
) -> TokenView:
    """Take a token back for ever; that of somebody else takes a manager.

    Raises:
        RefusedError: When it is of somebody else.
    """
    with acting.counter.writing() as connection:
        owner = load_token(connection, token).user_name
        if owner != reader.name and not reader.may(Role.MANAGE):
            raise RefusedError(Refusal.NOT_ALLOWED, "The token is of somebody else.")
        return show_token(revoke_token(connection, token, stamp=acting.stamp))
