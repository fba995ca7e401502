"""The page that shows what was read of a file, and asks what its headings mean."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Annotated

from fastapi import APIRouter, Query, Request, Response
from starlette.concurrency import run_in_threadpool

from service.errors import ServiceError
from service.keeping.intake.how_read import HowRead, write_how
from service.keeping.intake.kept_files import KeptFiles, keep_note
from service.keeping.intake.parts import Part, find_parts
from service.keeping.intake.read_as import refuse_mixed
from service.records.mapping.check import DELIMITERS, ENCODINGS
from service.records.mapping.mapping import OBJECTS, TABLE_COLUMNS, ColumnMapping
from service.store.kept.mappings import save_mapping
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import Acting, TheCounter
from service.web.store.counter import Counter
from service.web.views.intake.look_form import read_look, show_parts
from service.web.views.intake.send import HOW, find_sent, send_again
from service.web.views.language.telling import tell_error
from service.web.views.shell.addresses import page_with
from service.web.views.shell.forms import WHOLE, FilledForm
from service.web.views.shell.notice import go_to
from service.web.views.shell.page import show_page
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)

_TOLD = ("table", "encoding", "delimiter", "sheet")
_LONGEST = 200
Said = Annotated[str, Query(max_length=_LONGEST)]


@router.get("/import/look", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def look(request: Request, counter: TheCounter, kept: Said = "") -> Response:
    """Show the tables of what was sent; a lone one may be looked at as something else."""
    sent = find_sent(counter, kept)
    if sent is None:
        return send_again(request, kept)
    told = {name: request.query_params.get(name, "")[:_LONGEST] for name in _TOLD}
    try:
        parts = _look(counter, sent, told)
    except ServiceError as error:
        form = FilledForm(faults={WHOLE: tell_error(error)})
        return _show(request, sent, (), (form, told))
    return _show(request, sent, parts, (FilledForm(), told))


@router.post("/import/look", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
async def look_sent(request: Request, acting: ThePageActing) -> Response:
    """Take what the headings mean, remember it where a name is given, and lead to the check."""
    form = await request.form()
    values = {name: value for name, value in form.items() if isinstance(value, str)}
    return await run_in_threadpool(_take, request, acting, values)


def _take(request: Request, acting: Acting, values: Mapping[str, str]) -> Response:
    sent = find_sent(acting.counter, values.get("kept", ""))
    if sent is None:
        return send_again(request, values.get("kept", ""))
    told = {name: values.get(name, "")[:_LONGEST] for name in _TOLD}
    parts: tuple[Part, ...] = ()
    try:
        parts = _look(acting.counter, sent, told)
        how, faults = read_look(parts, values)
        if not faults:
            refuse_mixed(sent, how)
            how = _remember(acting, how, " ".join(values.get("remember", "").split()))
            with acting.counter.working() as desk:
                by = keep_note(desk, HOW, write_how(how))
            return go_to(page_with("/import/check", kept=sent.name, by=by))
    except ServiceError as error:
        faults = {WHOLE: tell_error(error)}
    return _show(request, sent, parts, (FilledForm(values, faults), told))


def _look(counter: Counter, sent: KeptFiles, told: Mapping[str, str]) -> tuple[Part, ...]:
    """Look into what was sent; what is told counts where there is one table only.

    Raises:
        ServiceError: When a file cannot be read.
    """
    like = None
    if told["table"] in TABLE_COLUMNS and len(sent.records) == 1:
        like = {
            next(iter(sent.records)): ColumnMapping(
                told["table"],
                encoding=told["encoding"] if told["encoding"] in ENCODINGS else "",
                delimiter=told["delimiter"] if told["delimiter"] in DELIMITERS else "",
                sheet=told["sheet"],
            )
        }
    with counter.working() as desk:
        return find_parts(desk, sent, like)


def _remember(acting: Acting, how: HowRead, name: str) -> HowRead:
    """Save the mappings under a name; those of other tables than objects have it with the table."""
    if not name:
        return how
    with acting.counter.writing() as connection:
        for table, mapping in how.mappings.items():
            own = name if table == OBJECTS or len(how.mappings) == 1 else f"{name} {table}"
            save_mapping(connection, own[:_LONGEST], mapping, stamp=acting.stamp)
    return replace(how, named=name)


def _show(
    request: Request,
    sent: KeptFiles,
    parts: tuple[Part, ...],
    said: tuple[FilledForm, Mapping[str, str]],
) -> Response:
    form, told = said
    values = {
        "form": form,
        "kept": sent,
        "parts": show_parts(parts, form),
        "lone": parts[0].sample if len(parts) == len(sent.records) == 1 else None,
        "told": told,
        "encodings": ENCODINGS,
    }
    return show_page(request, "intake/look.html", values, status=form.status)
