"""Which container is packed: one that is there, by its number or label, or a new one."""

from __future__ import annotations

from typing import Annotated
from urllib.parse import unquote, urlsplit

from fastapi import APIRouter, Form, Query, Request, Response

from service.languages.saying import say
from service.records.record import ContainerKind, ContainerRecord
from service.store.load_records import load_containers
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.replies.refusals import RefusedError
from service.web.store.asking import TheCounter
from service.web.store.counter import Counter
from service.web.store.records.changing import add_record
from service.web.views.language.choices import list_kinds
from service.web.views.pack.addresses import page_of_table
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.notice import Notice, go_to
from service.web.views.shell.page import show_page
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)

CONTAINER, NEW = "container", "number"
_SCANNED = "/c/"


@router.get("/pack", include_in_schema=False, dependencies=[needs(Role.PACK)])
def choose(
    request: Request, counter: TheCounter, container: Annotated[str, Query(max_length=2000)] = ""
) -> Response:
    """Ask which container; one that is named and there is opened at once."""
    number = read_label(container)
    if not number:
        return show_choice(request)
    if not _is_there(counter, number):
        return show_choice(request, unknown=number)
    return go_to(page_of_table(number))


@router.post("/pack/new", include_in_schema=False, dependencies=[needs(Role.PACK)])
def begin(
    request: Request,
    acting: ThePageActing,
    number: Annotated[str, Form(max_length=500)] = "",
    kind: Annotated[ContainerKind, Form()] = ContainerKind.BOX,
) -> Response:
    """Begin a container of which only number and kind are known yet."""
    record = ContainerRecord(number.strip(), kind)
    try:
        with acting.counter.writing() as connection:
            add_record(connection, record, stamp=acting.stamp)
    except RefusedError:
        words = say("It needs a number of its own.")
        if _is_there(acting.counter, record.container_number):
            words = say(
                "{container_number} is there already: open it above.",
                container_number=record.container_number,
            )
        return show_choice(request, FilledForm({NEW: number, "kind": kind.value}, {NEW: words}))
    told = Notice(
        say(
            "{container_number} is begun. Put the first thing in.",
            container_number=record.container_number,
        )
    )
    return go_to(page_of_table(record.container_number), told)


def show_choice(request: Request, form: FilledForm | None = None, *, unknown: str = "") -> Response:
    """Show the page; an unknown number stands in both forms, with what can be done about it."""
    if unknown:
        fault = say(
            "There is no container {unknown}. Look at the label again, or begin it below.",
            unknown=unknown,
        )
        form = FilledForm({CONTAINER: unknown, NEW: unknown}, {CONTAINER: fault})
    filled = form or FilledForm()
    status = 404 if unknown else filled.status
    return show_page(
        request, "pack/choose.html", {"form": filled, "kinds": list_kinds()}, status=status
    )


def read_label(text: str) -> str:
    """Read a number as typed, or the address that the symbol of a label holds."""
    typed = text.strip()
    if "://" in typed and _SCANNED in typed:
        path = urlsplit(typed).path
        return unquote(path.partition(_SCANNED)[2])
    return typed


def _is_there(counter: Counter, number: str) -> bool:
    with counter.reading() as connection:
        return bool(load_containers(connection, [number]))
