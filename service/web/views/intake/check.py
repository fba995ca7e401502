"""The page that shows exactly what an import will change, and takes it over."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Form, Query, Request, Response

from service.errors import ServiceError
from service.keeping.intake.bring_kept import TakenKept, preview_kept, take_in_kept
from service.keeping.intake.how_read import read_how
from service.keeping.intake.kept_files import find_note
from service.languages.saying import said, say
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import TheCounter
from service.web.views.intake.differences import show_differences
from service.web.views.intake.later import ask_for_kept, is_large
from service.web.views.intake.send import HOW, find_sent, send_again
from service.web.views.language.telling import tell_error
from service.web.views.shell.addresses import page_with
from service.web.views.shell.forms import WHOLE, FilledForm
from service.web.views.shell.notice import Notice, go_to
from service.web.views.shell.page import show_page
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)

_PAGE = "intake/check.html"
Name = Annotated[str, Query(max_length=200)]
SentName = Annotated[str, Form(max_length=200)]


@router.get("/import/check", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def check(request: Request, counter: TheCounter, kept: Name = "", by: Name = "") -> Response:
    """Show what would change; nothing is changed."""
    sent = find_sent(counter, kept)
    if sent is None:
        return send_again(request, kept)
    how = read_how(find_note(counter.data_folder, by, HOW))
    values: dict[str, object] = {"kept": sent, "by": by, "seen": None, "named": how.named}
    form = FilledForm()
    try:
        with counter.working() as desk:
            values["seen"] = show_differences(preview_kept(desk, sent, how))
    except ServiceError as error:
        form = FilledForm(faults={WHOLE: tell_error(error)})
    return show_page(request, _PAGE, {**values, "form": form}, status=form.status)


@router.post("/import/take-over", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def take_over(
    request: Request, acting: ThePageActing, kept: SentName = "", by: SentName = ""
) -> Response:
    """Take it in, at once or, where it is much, as a task."""
    counter = acting.counter
    sent = find_sent(counter, kept)
    if sent is None:
        return send_again(request, kept)
    how = read_how(find_note(counter.data_folder, by, HOW))
    try:
        if is_large(sent):
            records, photos = ask_for_kept(acting, sent, how)
            return go_to(page_with("/import/done", task=records, photos=photos))
        with counter.working() as desk:
            taken = take_in_kept(desk, sent, how, stamp=acting.stamp)
    except ServiceError as error:
        form = FilledForm(faults={WHOLE: tell_error(error)})
        values = {"kept": sent, "by": by, "seen": None, "named": how.named, "form": form}
        return show_page(request, _PAGE, values, status=form.status)
    number = taken.records.import_id if taken.records else 0
    return go_to(page_with("/import/done", id=number), Notice(_tell(taken)))


def _tell(taken: TakenKept) -> str:
    told = [say("It is taken over.")]
    if taken.photos is not None:
        matched, new = len(taken.photos.matched), taken.photos.new
        told.append(say("Photos: {matched} matched, {new} of them new.", matched=matched, new=new))
        told += [said(one.message) for one in taken.photos.findings[:3]]
    return " ".join(told)
