"""Paths of pairings: a code made by whoever has signed in signs another device in."""

from __future__ import annotations

from fastapi import APIRouter

from service.keeping.people.pairing import begin_pairing, finish_pairing
from service.store.people.role import Role
from service.web.access.entrance import MOST_BODY_BYTES, TheEntrance
from service.web.access.gate import OPEN, GatedRoute, needs
from service.web.access.porter import TheReader
from service.web.store.asking import TheCounter
from service.web.store.people.sessions import refuse_without_session, show_session
from service.web.store.people.shapes import PairedBody, PairingView, SessionView

router = APIRouter(route_class=GatedRoute, max_body_size=MOST_BODY_BYTES)


@router.post("/api/pairings", dependencies=[needs(Role.VIEW)], status_code=201)
def begin(counter: TheCounter, reader: TheReader) -> PairingView:
    """Make a code that signs one other device in as oneself, within five minutes."""
    refuse_without_session(reader)
    with counter.writing() as connection:
        pairing = begin_pairing(connection, reader.name, now=counter.now())
    return PairingView(code=pairing.code, ends_at=pairing.ends_at)


@router.post("/api/pairings/finish", dependencies=[OPEN], status_code=201)
def finish(body: PairedBody, counter: TheCounter, entrance: TheEntrance) -> SessionView:
    """Use a code up: the reply sets a cookie as signing in does."""
    entrance.count("")
    with counter.writing() as connection:
        signed = finish_pairing(connection, body.code, body.device, now=counter.now())
    entrance.let_in(signed)
    return show_session(signed)
