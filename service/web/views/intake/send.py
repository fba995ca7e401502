"""The page on which files are sent to be looked at; nothing of them is in the store yet."""

from __future__ import annotations

from typing import BinaryIO

from fastapi import APIRouter, Request, Response
from starlette.concurrency import run_in_threadpool
from starlette.datastructures import UploadFile

from service.errors import JobError, NotFoundError, RecordsError
from service.keeping.desk import Desk
from service.keeping.intake.how_read import write_how
from service.keeping.intake.kept_files import KeptFiles, find_kept, keep_files, keep_note
from service.keeping.intake.parts import choose_how, find_parts
from service.keeping.intake.read_as import refuse_mixed
from service.languages.saying import said
from service.sentence import Sentence
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.store.counter import Counter
from service.web.views.language.telling import tell_error
from service.web.views.shell.addresses import page_with
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.notice import go_to
from service.web.views.shell.page import show_page

router = APIRouter(route_class=GatedRoute)

HOW = "how.json"
"""The name under which it is kept how a source is read."""
_NOTHING = Sentence("Choose a file first: a spreadsheet, an export, or photos.")
_GONE = Sentence("What was sent is no longer kept. Send it again, nothing was changed.")


@router.get("/import", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def import_page(request: Request) -> Response:
    """Ask for files."""
    return _show(request, FilledForm())


@router.post("/import", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
async def send(request: Request, counter: TheCounter) -> Response:
    """Keep what was sent for a while, and lead to what has to be said of it, or to the check."""
    async with request.form() as form:
        # Where nothing was chosen a browser sends a file without a name.
        sent = [
            (one.filename, one.file)
            for one in (*form.getlist("files"), *form.getlist("folder"))
            if isinstance(one, UploadFile) and one.filename
        ]
        return await run_in_threadpool(_keep, request, counter, sent)


def _keep(request: Request, counter: Counter, sent: list[tuple[str, BinaryIO]]) -> Response:
    if not sent:
        return _show(request, FilledForm(faults={"files": said(_NOTHING)}))
    try:
        with counter.working() as desk:
            kept = find_kept(desk.data_folder, keep_files(desk, sent))
            return go_to(_next_page(desk, kept))
    except (RecordsError, JobError) as error:
        return _show(request, FilledForm(faults={"files": tell_error(error)}))


def find_sent(counter: Counter, name: str) -> KeptFiles | None:
    """Find what was sent; None where it is no longer kept."""
    try:
        return find_kept(counter.data_folder, name)
    except NotFoundError:
        return None


def send_again(request: Request, name: str) -> Response:
    """Ask for files anew, and say why where something was sent before."""
    if not name:
        return _show(request, FilledForm())
    return _show(request, FilledForm(faults={"files": said(_GONE)}), status=410)


def _next_page(desk: Desk, kept: KeptFiles) -> str:
    """Choose the page: nobody is asked what the headings say themselves, or a saved mapping."""
    parts = find_parts(desk, kept)
    how = choose_how(parts)
    if all(part.is_clear for part in parts):
        refuse_mixed(kept, how)
        return page_with("/import/check", kept=kept.name, by=keep_note(desk, HOW, write_how(how)))
    return page_with("/import/look", kept=kept.name)


def _show(request: Request, form: FilledForm, *, status: int = 0) -> Response:
    return show_page(request, "intake/send.html", {"form": form}, status=status or form.status)
