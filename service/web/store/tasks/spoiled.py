"""The path that prints the cards of a spoiled sheet again as long work."""

from __future__ import annotations

from fastapi import APIRouter, Response
from pydantic import ConfigDict, Field

from service.jobs.line import submit_within
from service.jobs.requests import SpoiledRequest
from service.keeping.printing.printers_file import name_printer
from service.store.handles import Connection
from service.store.kept.tasks import load_task
from service.store.people.role import Role
from service.store.printed.runs import load_run_record
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import Asked, TheAsked
from service.web.store.cards.wanted import SpoiledBody
from service.web.store.once import Made, make_once
from service.web.store.tasks.shapes import TaskView, show_task

router = APIRouter(route_class=GatedRoute)

_ACCEPTED = 202


class SpoiledTaskBody(SpoiledBody):
    """A sheet of a run that was spoiled."""

    model_config = ConfigDict(
        json_schema_extra={
            "examples": [{"run": 1, "file": "end-label, A4 2x4 99.1x67.7.pdf", "sheet": 1}]
        }
    )

    run: int = Field(ge=1, lt=2**31)

    def to_request(self) -> SpoiledRequest:
        """Make the request that is kept until the work begins."""
        return SpoiledRequest(self.run, self.file, self.sheet, self.printer, self.tray)


@router.post(
    "/api/tasks/spoiled",
    dependencies=[needs(Role.PRINT)],
    status_code=_ACCEPTED,
    response_model=TaskView,
)
def ask_for_spoiled(body: SpoiledTaskBody, asked: TheAsked) -> Response:
    """Ask for the cards of a spoiled sheet again; they are marked when the new ones are made."""
    return make_once(
        asked, body.model_dump_json(), lambda connection: _submit(connection, asked, body)
    )


def _submit(connection: Connection, asked: Asked, body: SpoiledTaskBody) -> Made:
    load_run_record(connection, body.run)
    name_printer(asked.counter.data_folder, body.printer, body.tray)
    line = asked.counter.line
    task_id = submit_within(connection, line, body.to_request(), stamp=asked.stamp)
    shown = show_task(load_task(connection, task_id))
    return Made(shown, _ACCEPTED, {"Location": f"/api/tasks/{task_id}"})
