"""Who reads a page: the name that history keeps, the language, and the token of their forms."""

from __future__ import annotations

import hmac
import re
import secrets
from dataclasses import dataclass
from typing import Annotated
from urllib.parse import quote, unquote

from fastapi import Depends, Request

from service.languages.page_words import PageWords, choose_language, load_page_words
from service.store.history import Stamp
from service.web.replies.refusals import Refusal, RefusedError
from service.web.store.asking import Acting, TheCounter, read_actor

NAME_COOKIE = "underlid-name"
LANGUAGE_COOKIE = "underlid-language"
TOKEN_COOKIE = "underlid-form"  # noqa: S105 - the name of a cookie
TOKEN_FIELD = "form_token"  # noqa: S105 - the name of a field
_LANGUAGE = re.compile(r"[a-z]{2,3}(?:-[A-Z]{2})?")
_TOKEN = re.compile(r"[A-Za-z0-9_-]{43}")


@dataclass(frozen=True, slots=True)
class Reader:
    """Who reads, as far as the service can tell.

    Attributes:
        name: As history will keep it.
        words: The language of the pages.
        form_token: What each form must send back (OWASP, double-submit cookie).
    """

    name: str
    words: PageWords
    form_token: str


def read_reader(request: Request) -> Reader:
    """Tell who reads, from cookies of this browser and what the service was started with."""
    name = unquote(request.cookies.get(NAME_COOKIE, "")) or str(request.app.state.default_actor)
    asked = request.cookies.get(LANGUAGE_COOKIE, "")
    preferred = [asked] if _LANGUAGE.fullmatch(asked) else _preferred(request)
    token = request.cookies.get(TOKEN_COOKIE, "")
    kept = token if _TOKEN.fullmatch(token) else secrets.token_urlsafe(32)
    return Reader(name, load_page_words(choose_language(preferred)), kept)


async def check_form(request: Request) -> None:
    """Refuse a form that was not on a page of ours.

    Raises:
        RefusedError: When its token is not the one of this browser.
    """
    if request.method in {"GET", "HEAD"}:
        return
    sent = (await request.form()).get(TOKEN_FIELD, "")
    kept = request.cookies.get(TOKEN_COOKIE, "")
    if not isinstance(sent, str) or not kept or not hmac.compare_digest(sent, kept):
        raise RefusedError(Refusal.FOREIGN_PAGE, "Load the page again, then send the form.")


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
