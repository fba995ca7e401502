"""Who reads a page: the name that history keeps, the language, and the token of their forms."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Annotated
from urllib.parse import quote, unquote

from fastapi import Depends, Request

from service.languages.page_words import PageWords, choose_language, load_page_words
from service.store.history import Stamp
from service.store.people.role import Role
from service.web.access.form_tokens import FIELD, check_form_token, form_token
from service.web.access.porter import reader_of
from service.web.access.reader import Reader
from service.web.store.asking import Acting, TheCounter, read_actor

NAME_COOKIE = "underlid-name"
LANGUAGE_COOKIE = "underlid-language"
_LANGUAGE = re.compile(r"[a-z]{2,3}(?:-[A-Z]{2})?")


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
    typed = unquote(request.cookies.get(NAME_COOKIE, "")) or str(request.app.state.default_actor)
    name = person.name if person.is_signed_in else typed
    asked = request.cookies.get(LANGUAGE_COOKIE, "")
    preferred = [asked] if _LANGUAGE.fullmatch(asked) else _preferred(request)
    return PageReader(person, name, load_page_words(choose_language(preferred)), form_token(person))


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


def _preferred(request: Request) -> list[str]:
    """List the languages of the browser, best first (RFC 9110, section 12.5.4)."""
    parts = [part.strip() for part in request.headers.get("accept-language", "").split(",")]
    weighed = [
        (-_weight(rest), at, tag.strip())
        for at, part in enumerate(parts[:20])
        for tag, _, rest in [part.partition(";")]
        if tag
    ]
    return [tag for _, _, tag in sorted(weighed)]


def _weight(parameter: str) -> float:
    try:
        return float(parameter.strip().removeprefix("q=") or 1)
    except ValueError:
        return 0.0
