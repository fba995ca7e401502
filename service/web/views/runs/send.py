"""Sending a PDF of a run to a printer in the network."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Form, Response

from service.errors import ServiceError
from service.keeping.sending.send import find_printer, load_files, send_files
from service.languages.saying import said, say
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.views.language.telling import tell_error
from service.web.views.shell.notice import Notice, go_to
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)


@router.post("/run/send", include_in_schema=False, dependencies=[needs(Role.PRINT)])
def send_file(
    acting: ThePageActing,
    run: Annotated[int, Form(ge=1, lt=2**31)],
    printer: Annotated[str, Form(max_length=500)],
    file: Annotated[str, Form(max_length=400)] = "",
) -> Response:
    """Send a file, and say what the printer said."""
    counter = acting.counter
    record = load_files(counter.engine, run, file)
    try:
        known = find_printer(counter.data_folder, printer)
        sent = send_files(counter.shelf, known, record, sender=acting.stamp.actor)
    except ServiceError as error:
        return go_to(f"/run/{run}", Notice(say("It was not sent. {why}", why=tell_error(error))))
    notes = dict.fromkeys(said(note) for one in sent for note in one.notes)
    names = ", ".join(one.file for one in sent)
    taken = say("{printer} has taken {names}.", printer=printer, names=names)
    return go_to(f"/run/{run}", Notice(" ".join((taken, *notes))))
