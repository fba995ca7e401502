"""Paths of sessions: signing in and out, who is here, one's own password."""

from __future__ import annotations

from fastapi import APIRouter

from service.keeping.people.signing_in import SignedIn, SignIn, begin_session, sign_in, sign_out
from service.keeping.people.users import change_own_password
from service.store.people.role import Role
from service.web.access.entrance import MOST_BODY_BYTES, TheEntrance
from service.web.access.gate import OPEN, GatedRoute, needs
from service.web.access.porter import TheReader
from service.web.access.reader import Reader, Way
from service.web.replies.refusals import Refusal, RefusedError
from service.web.store.asking import TheActing, TheCounter
from service.web.store.people.shapes import (
    OwnPasswordBody,
    ReaderView,
    SessionView,
    SignInBody,
    show_reader,
)

router = APIRouter(route_class=GatedRoute, max_body_size=MOST_BODY_BYTES)


@router.post("/api/sessions", dependencies=[OPEN], status_code=201)
def begin(body: SignInBody, counter: TheCounter, entrance: TheEntrance) -> SessionView:
    """Sign in: the reply sets a cookie that lasts 14 days, or 12 hours after its last use.

    Programs use a token. A name and an address may try a few times a minute.
    """
    entrance.count(body.name)
    asked = SignIn(body.name, body.password, body.device)
    signed = sign_in(counter.engine, asked, now=counter.now())
    entrance.let_in(signed)
    return show_session(signed)


@router.get("/api/sessions/current", dependencies=[needs(Role.VIEW)])
def who(reader: TheReader) -> ReaderView:
    """Say who is here, and what they may do."""
    return show_reader(reader)


@router.delete("/api/sessions/current", dependencies=[needs(Role.VIEW)])
def end(reader: TheReader, counter: TheCounter, entrance: TheEntrance) -> ReaderView:
    """Sign out: the session ends and its cookie goes."""
    refuse_without_session(reader)
    with counter.writing() as connection:
        sign_out(connection, reader.secret)
    return show_reader(entrance.show_out())


@router.post("/api/sessions/password", dependencies=[needs(Role.VIEW)])
def change_password(
    body: OwnPasswordBody, acting: TheActing, reader: TheReader, entrance: TheEntrance
) -> SessionView:
    """Change one's own password; all one's sessions end, and this device gets a new one."""
    refuse_without_session(reader)
    entrance.count(reader.name)
    with acting.counter.writing() as connection:
        user = change_own_password(
            connection, reader.name, current=body.current, password=body.new, stamp=acting.stamp
        )
        signed = begin_session(connection, user, "", now=acting.stamp.at)
    entrance.let_in(signed)
    return show_session(signed)


def show_session(signed: SignedIn) -> SessionView:
    """Say whose session has just begun."""
    return SessionView(name=signed.user.name, role=signed.user.role, ends_at=signed.ends_at)


def refuse_without_session(reader: Reader) -> None:
    """Refuse what only a person who has signed in may do, not a program with a token.

    Raises:
        RefusedError: When there is no session.
    """
    if reader.way is not Way.SESSION:
        raise RefusedError(Refusal.SIGN_IN_NEEDED, "This is for whoever has signed in.")
