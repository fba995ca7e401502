"""Who reads a page: the name that history keeps, the language, and the token of their forms."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated
from urllib.parse import quote, unquote

from fastapi import Depends, Request

from service.languages.page_words import PageWords
from service.languages.saying import spoken
from service.store.history import Stamp
from service.store.people.role import Role
from service.web.access.form_tokens import FIELD, check_form_token, form_token
from service.web.access.handed import handed
from service.web.access.porter import reader_of
from service.web.access.reader import Reader
from service.web.store.asking import Acting, TheCounter, read_actor

NAME_COOKIE = "underlid-name"


@dataclass(frozen=True, slots=True)
class PageReader:
    """Who reads a page.

    Attributes:
        person: Who that is, and what they may do.
        name: As history will keep it.
        words: The language of the pages.
        form_token: What each form must send back.
    """

    person: Reader
    name: str
    words: PageWords
    form_token: str

    def may(self, role: str) -> bool:
        """Tell whether they may do the work of a role, which a page then offers."""
        return self.person.may(Role(role))


def read_reader(request: Request) -> PageReader:
    """Tell who reads: whoever has signed in, else as this browser was told."""
    person = reader_of(request)
    typed = unquote(request.cookies.get(NAME_COOKIE, "")) or str(handed(request, "default_actor"))
    name = person.name if person.is_signed_in else typed
    return PageReader(person, name, spoken(), form_token(person))


async def check_form(request: Request) -> None:
    """Refuse a form that was not on a page of ours.

    Raises:
        RefusedError: When its token is not the one of this reader.
    """
    if request.method not in {"GET", "HEAD"}:
        sent = (await request.form()).get(FIELD, "")
        check_form_token(reader_of(request), sent if isinstance(sent, str) else "")


def _acting(request: Request, counter: TheCounter) -> Acting:
    """Say who changes something and when.

    Raises:
        RefusedError: When the name cannot be written down.
    """
    return Acting(counter, Stamp(read_actor(quote(read_reader(request).name)), counter.now()))


ThePageActing = Annotated[Acting, Depends(_acting)]
