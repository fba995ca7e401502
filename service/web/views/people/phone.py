"""Signing in a telephone: a code made here is scanned or typed there."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime

from fastapi import APIRouter, Request, Response

from service.keeping.people.pairing import HOLDS, begin_pairing
from service.keeping.sharing.reach import Reach
from service.store.people.role import Role
from service.symbols.outline import symbol_path
from service.symbols.symbol import Level, encode_symbol
from service.web.access.entrance import MOST_BODY_BYTES
from service.web.access.gate import GatedRoute, needs
from service.web.access.porter import TheReader
from service.web.guard import LOOPBACK
from service.web.store.asking import TheCounter
from service.web.store.people.sessions import refuse_without_session
from service.web.store.people.sharing import TheReach
from service.web.views.shell.page import show_page

router = APIRouter(route_class=GatedRoute, max_body_size=MOST_BODY_BYTES)

_PAGE = "people/phone.html"


@dataclass(frozen=True, slots=True)
class ShownCode:
    """A code as it is shown: in letters, and as a symbol that leads to its page.

    `path` is the outline of the symbol in modules and `side_modules` its side with the clear
    margin; both are empty where no telephone reaches this machine.
    """

    code: str = field(repr=False)
    ends_at: datetime
    holds_seconds: int
    path: str = field(default="", repr=False)
    side_modules: int = 0


@router.get("/people/phone", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def phone(request: Request, reach: TheReach) -> Response:
    """Say how a telephone is signed in."""
    return _show(request, reach, None)


@router.post("/people/phone", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def make_code(
    request: Request, counter: TheCounter, reader: TheReader, reach: TheReach
) -> Response:
    """Make a code and show it, this once; one from before holds no longer."""
    refuse_without_session(reader)
    with counter.writing() as connection:
        pairing = begin_pairing(connection, reader.name, now=counter.now())
    address = find_address(request, reach)
    return _show(request, reach, draw_code(pairing.code, pairing.ends_at, address))


def find_address(request: Request, reach: Reach) -> str:
    """Find the beginning of the address a telephone can use, over https; empty where there is none.

    The one this page was opened by is best: whoever looks at it has got through.
    """
    if request.url.scheme == "https" and request.url.hostname not in LOOPBACK:
        return str(request.base_url).rstrip("/")
    return next(iter(reach.addresses), "")


def draw_code(code: str, ends_at: datetime, address: str) -> ShownCode:
    """Draw a code as a symbol of the address of its page."""
    holds_seconds = int(HOLDS.total_seconds())
    if not address:
        return ShownCode(code, ends_at, holds_seconds)
    symbol = encode_symbol(f"{address}/pair/{code}", level=Level.M)
    return ShownCode(code, ends_at, holds_seconds, symbol_path(symbol), symbol.full_side_modules)


def _show(request: Request, reach: Reach, shown: ShownCode | None) -> Response:
    values = {"shown": shown, "address": find_address(request, reach)}
    return show_page(request, _PAGE, values)
