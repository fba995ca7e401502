"""The path that sends the PDFs of a run to a printer in the network."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Response
from pydantic import BaseModel, ConfigDict, Field

from service.keeping.sending.send import find_printer, load_files, send_files
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheAsked
from service.web.store.cards.prints import RunId
from service.web.store.once import Made, find_again, keep_made
from service.web.store.packings.shapes import Number
from service.web.store.records.shapes import STRICT

router = APIRouter(route_class=GatedRoute)


class SendBody(BaseModel):
    """To which printer; without a `file` all files of the run are sent, one after the other."""

    model_config = STRICT | ConfigDict(json_schema_extra={"examples": [{"printer": "Label desk"}]})

    printer: Number
    file: Annotated[str, Field(max_length=300)] = ""


class SentFileView(BaseModel):
    """A file that the printer took, the number it gave, and what it left open."""

    file: str
    job_id: int
    notes: list[str]


class SentView(BaseModel):
    """Every file that was sent."""

    sent: list[SentFileView]


@router.post(
    "/api/prints/{run}/send",
    dependencies=[needs(Role.PRINT)],
    status_code=201,
    response_model=SentView,
)
def send_run(run: RunId, body: SendBody, asked: TheAsked) -> Response:
    """Send PDFs of a run to a printer, unscaled and one-sided, to its own address alone.

    Whether they come out is between you and the printer: the cards count as made either way.
    """
    sent = body.model_dump_json()
    with asked.counter.reading() as connection:
        again = find_again(connection, asked, sent)
    if again is not None:
        return again
    printer = find_printer(asked.counter.data_folder, body.printer)
    record = load_files(asked.counter.engine, run, body.file)
    done = send_files(asked.counter.shelf, printer, record, sender=asked.stamp.actor)
    view = SentView(
        sent=[SentFileView(file=one.file, job_id=one.job_id, notes=list(one.notes)) for one in done]
    )
    made = Made(view)
    with asked.counter.writing() as connection:
        keep_made(connection, asked, sent, made)
    return made.to_response()
