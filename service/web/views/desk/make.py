"""From what was chosen to the sheets it needs, and on to the task that prints it."""

from __future__ import annotations

import hashlib
from functools import lru_cache

from fastapi import APIRouter, Request, Response

from service.errors import ServiceError
from service.jobs.line import submit_within
from service.jobs.requests import Request as Wanted
from service.sheets.stock import Stock
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.replies.refusals import Refusal, RefusedError
from service.web.store.asking import Acting, TheCounter
from service.web.store.cards.wanted import PrintBody
from service.web.store.counter import Counter
from service.web.views.desk.asked import Asked, What
from service.web.views.desk.form import Sent, read_body, read_order, text, texts
from service.web.views.desk.page import show_desk
from service.web.views.desk.settings import list_stocks
from service.web.views.desk.sheets import lay_tray, write_looks
from service.web.views.language.telling import tell_error
from service.web.views.shell.forms import WHOLE, FilledForm
from service.web.views.shell.notice import go_to
from service.web.views.shell.page import show_page
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)
files = APIRouter(route_class=GatedRoute)
"""What pages load."""

_STYLE = "stocks.css"
_FOR_A_YEAR = "public, max-age=31536000, immutable"


@files.get("/print/drawn/{digest}/{name}", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def drawn(digest: str, name: str, counter: TheCounter) -> Response:
    """Give the style that draws each stock to scale.

    Raises:
        RefusedError: When there is no such file.
    """
    style, current = _style(list_stocks(counter.data_folder))
    if (digest, name) != (current, _STYLE):
        raise RefusedError(Refusal.NOT_FOUND, "There is no such file.")
    headers = {"Cache-Control": _FOR_A_YEAR}
    return Response(style, media_type="text/css; charset=utf-8", headers=headers)


@router.post("/print/sheets", include_in_schema=False, dependencies=[needs(Role.PRINT)])
def sheets(request: Request, counter: TheCounter, sent: Sent) -> Response:
    """Ask which positions of the first sheets are gone; nothing is printed yet."""
    if text(sent, "wanted"):
        return _show_sheets(request, counter, read_body(sent), fresh=texts(sent, "fresh"))
    try:
        ordered = read_order(counter, sent)
        if not ordered.faults:
            return _show_sheets(request, counter, ordered.body)
        faults = dict(ordered.faults)
    except ServiceError as error:
        faults = {WHOLE: tell_error(error)}
    typed = {name: value for name, value in sent.multi_items() if isinstance(value, str)}
    what = text(sent, "what")
    asked = Asked(
        What(what) if what in set(What) else What.NOTHING,
        tuple(texts(sent, "containers")),
        tuple(texts(sent, "objects")),
    )
    return show_desk(request, counter, asked, FilledForm(typed, faults))


@router.post("/print/make", include_in_schema=False, dependencies=[needs(Role.PRINT)])
def make(acting: ThePageActing, sent: Sent) -> Response:
    """Put the run in the line, and show how it goes."""
    wanted = read_body(sent).to_request(acting.counter.data_folder)
    return go_to(f"/tasks/{put_in_line(acting, wanted)}")


def put_in_line(acting: Acting, wanted: Wanted) -> str:
    """Ask for work, and give the name of its task."""
    with acting.counter.writing() as connection:
        return submit_within(connection, acting.counter.line, wanted, stamp=acting.stamp)


def _show_sheets(
    request: Request, counter: Counter, body: PrintBody, *, fresh: list[str] | None = None
) -> Response:
    tray = lay_tray(counter, body, fresh=fresh or ())
    wanted = body.model_copy(update={"sheets": []})
    values = {
        "tray": tray,
        "wanted": wanted.model_dump_json(exclude_defaults=True),
        "body": body,
        "look": f"/print/drawn/{_style(list_stocks(counter.data_folder))[1]}/{_STYLE}",
    }
    return show_page(request, "print/sheets.html", values)


@lru_cache(maxsize=2)
def _style(stocks: tuple[Stock, ...]) -> tuple[str, str]:
    """Write the style, and name its content."""
    style = write_looks(stocks)
    return style, hashlib.sha256(style.encode()).hexdigest()[:16]
