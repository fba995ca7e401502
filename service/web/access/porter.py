"""The porter: knows who comes in, by a token, a session, or because it is this machine."""

from __future__ import annotations

import secrets
from contextlib import suppress
from dataclasses import dataclass, field
from typing import Annotated

from fastapi import Depends, Request
from starlette.requests import HTTPConnection

from service.errors import StoreBusyError
from service.keeping.people.signing_in import (
    find_signed_in,
    is_use_due,
    note_session_used,
)
from service.keeping.people.tokens import find_token_user, is_token_use_due, note_token_use
from service.store.people.role import roles_within
from service.store.people.users import has_users
from service.web.access.cookies import read_session
from service.web.access.handed import handed
from service.web.access.reader import Reader, Way, make_local, make_nobody
from service.web.access.tries import Tries
from service.web.store.counter import Counter

_FORWARDED = ("forwarded", "x-forwarded-for", "x-real-ip")
_KEY_BYTES = 32


@dataclass(frozen=True, slots=True)
class Porter:
    """Recognises whoever asks.

    As long as the store has no user everybody on this machine may do everything, and nobody else
    anything; `is_local` says that the service listens to this machine alone. From the first user
    on everybody signs in. Without a counter there is no store and so no user. That somebody was
    here is written down where the store is free for it; nobody is sent away because it is not.
    """

    counter: Counter | None
    is_local: bool
    tries: Tries = field(default_factory=Tries)
    form_key: bytes = field(default_factory=lambda: secrets.token_bytes(_KEY_BYTES), repr=False)

    def recognise(self, connection: HTTPConnection) -> Reader:
        """Say who asks; a token that is none is nobody's, whatever cookie comes with it."""
        if self.counter is None:
            return make_local(self.form_key)
        with self.counter.reading() as store:
            anybody = has_users(store)
        if not anybody:
            return self._recognise_place(connection)
        token = connection.headers.get("authorization")
        if token is not None:
            return self._recognise_token(self.counter, token)
        secret = read_session(connection)
        return self.nobody() if secret is None else self._recognise_session(self.counter, secret)

    def _recognise_place(self, connection: HTTPConnection) -> Reader:
        """Tell this machine from others; what a proxy hands on comes from somewhere else."""
        if self.is_local and not any(name in connection.headers for name in _FORWARDED):
            return make_local(self.form_key)
        return self.nobody()

    def _recognise_token(self, counter: Counter, header: str) -> Reader:
        scheme, _, secret = header.partition(" ")
        if scheme.casefold() != "bearer":
            return self.nobody()
        now = counter.now()
        with counter.reading() as store:
            found = find_token_user(store, secret.strip())
        if found is None:
            return self.nobody()
        token, user = found
        if is_token_use_due(token, now=now):
            with suppress(StoreBusyError), counter.writing() as store:
                note_token_use(store, token, now=now)
        scopes = token.scopes & roles_within(user.role)
        return Reader(user.name, user.role, Way.TOKEN, scopes, self.form_key)

    def _recognise_session(self, counter: Counter, secret: str) -> Reader:
        now = counter.now()
        with counter.reading() as store:
            user = find_signed_in(store, secret, now=now)
            is_due = user is not None and is_use_due(store, secret, now=now)
        if user is None:
            return self.nobody()
        if is_due:
            with suppress(StoreBusyError), counter.writing() as store:
                note_session_used(store, secret, user, now=now)
        scopes = roles_within(user.role)
        return Reader(user.name, user.role, Way.SESSION, scopes, secret.encode(), secret)

    def nobody(self) -> Reader:
        """Give a reader who has not signed in."""
        return make_nobody(self.form_key)


def porter_of(connection: HTTPConnection) -> Porter:
    """Give the porter of the application a request came to.

    Raises:
        TypeError: When the application has none.
    """
    porter = handed(connection, "porter")
    if not isinstance(porter, Porter):
        raise TypeError(type(porter))
    return porter


def reader_of(request: Request) -> Reader:
    """Give whom the gate has recognised; a route that is open to all has no need to ask."""
    known = getattr(request.state, "reader", None)
    return known if isinstance(known, Reader) else porter_of(request).recognise(request)


ThePorter = Annotated[Porter, Depends(porter_of)]
TheReader = Annotated[Reader, Depends(reader_of)]
