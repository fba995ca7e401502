"""A card that was scanned while walking, and the container it is put on."""

from __future__ import annotations

from fastapi import APIRouter, Request, Response

from service.errors import ServiceError, WrongContainerError
from service.keeping.printing.attach import ScannedCard, attach_scanned
from service.keeping.printing.scanned import read_card, read_number
from service.languages.saying import say
from service.records.record import Museum
from service.store.load_records import load_museum
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.views.attach.done import tell_done
from service.web.views.attach.page import WALK
from service.web.views.desk.form import Sent, text
from service.web.views.desk.walking import drop_held, hold_card, read_held
from service.web.views.language.telling import tell_error
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.notice import go_to
from service.web.views.shell.page import show_page
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)

_HELD = "/attach/held"
_DIGITS = 10


@router.get("/attach/held", include_in_schema=False, dependencies=[needs(Role.VIEW)])
def held(request: Request) -> Response:
    """Ask for the container of the card in hand, or for a card where none is held."""
    return _ask(request, read_held(request), FilledForm())


@router.post("/attach/hold", include_in_schema=False, dependencies=[needs(Role.PRINT)])
def hold(request: Request, counter: TheCounter, sent: Sent) -> Response:
    """Take a scanned card in hand; its container is scanned next."""
    with counter.reading() as connection:
        card = _read_sent(sent, load_museum(connection))
    if card is None:
        form = FilledForm(
            {"address": text(sent, "address")},
            {"address": say("That is not the code of a lid card, cover card or contents list.")},
        )
        return _ask(request, None, form)
    response = go_to(_HELD)
    hold_card(response, card)
    return response


@router.post("/attach/scanned", include_in_schema=False, dependencies=[needs(Role.PRINT)])
def put_scanned_on(request: Request, acting: ThePageActing, sent: Sent) -> Response:
    """Mark the scanned card, or the one in hand, as attached to the container that was scanned.

    A card of another container is caught, and nothing is marked.
    """
    with acting.counter.reading() as connection:
        museum = load_museum(connection)
    card = _read_sent(sent, museum) or read_held(request)
    number = read_number(text(sent, "container_number"), museum)
    if card is None or not number:
        fault = say("Scan the label on the box, or type its number.")
        return _ask(request, card, FilledForm({}, {"container_number": fault} if card else {}))
    try:
        with acting.counter.writing() as connection:
            done = attach_scanned(connection, card, container_number=number, stamp=acting.stamp)
    except WrongContainerError as error:
        values = {"card": card, "number": number, "advice": error.advice}
        return show_page(request, "attach/wrong.html", values, status=409)
    except ServiceError as error:
        form = FilledForm({"container_number": number}, {"container_number": tell_error(error)})
        return _ask(request, card, form)
    response = tell_done(WALK, [done])
    drop_held(response)
    return response


def _read_sent(sent: Sent, museum: Museum) -> ScannedCard | None:
    """Read a card from its parts, or from the whole address as a reader of codes types it."""
    revision, letters = text(sent, "revision"), text(sent, "letters")
    if revision.isascii() and revision.isdigit() and len(revision) < _DIGITS and letters:
        return ScannedCard(text(sent, "card_of"), int(revision), letters)
    return read_card(text(sent, "address"), museum)


def _ask(request: Request, card: ScannedCard | None, form: FilledForm) -> Response:
    return show_page(request, "attach/held.html", {"card": card, "form": form}, status=form.status)
