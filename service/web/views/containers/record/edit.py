"""Forms of a container's record: a new one, and one that is changed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated

from fastapi import APIRouter, Depends, Form, Path, Query, Request, Response

from service.languages.saying import said, say
from service.records.record import ContainerRecord
from service.sentence import Sentence
from service.store.load_records import load_container
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.replies.refusals import Refusal, RefusedError
from service.web.store.asking import TheCounter
from service.web.store.matching import tag_record
from service.web.store.records.changing import add_record, change_record
from service.web.views.containers.record.read import find_odd_nesting, read_container
from service.web.views.containers.record.values import write_values
from service.web.views.language.choices import list_kinds, list_lids
from service.web.views.shell.addresses import page_of_container
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.notice import Notice, go_to
from service.web.views.shell.page import show_page
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)

_NUMBER = "container_number"
_WAS_CHANGED = Sentence(
    "Somebody else has changed this meanwhile. Compare, then keep yours or theirs."
)


@dataclass(frozen=True, slots=True)
class Typed:
    """What a form sent of a container."""

    fields: Mapping[str, str]

    @property
    def number(self) -> str:
        """The number that was typed, or that the form is about."""
        return self.fields.get(_NUMBER, "").strip()


async def _typed(request: Request) -> Typed:
    form = await request.form()
    return Typed({name: text for name, text in form.items() if isinstance(text, str)})


TheTyped = Annotated[Typed, Depends(_typed)]


@router.get("/new/container", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def new(request: Request, number: Annotated[str, Query(max_length=500)] = "") -> Response:
    """Ask for all that is known of a new container; its number is enough."""
    values = write_values(ContainerRecord(number))
    return _show(request, FilledForm(values))


@router.post("/new/container", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def add(request: Request, acting: ThePageActing, typed: TheTyped) -> Response:
    """Keep a new container."""
    read = read_container(typed.fields)
    with acting.counter.reading() as connection:
        faults = {**find_odd_nesting(connection, read.record), **read.faults}
    if not faults:
        try:
            with acting.counter.writing() as connection:
                added = add_record(connection, read.record, stamp=acting.stamp)
        except RefusedError as error:
            faults = {_NUMBER: said(error.detail)}
        else:
            page = page_of_container(added.container_number)
            return go_to(
                page,
                Notice(
                    say(
                        "{container_number} is kept. Now pack it.",
                        container_number=added.container_number,
                    )
                ),
            )
    return _show(request, FilledForm(typed.fields, faults))


@router.get(
    "/edit/container/{number:path}", include_in_schema=False, dependencies=[needs(Role.MANAGE)]
)
def edit(
    request: Request, number: Annotated[str, Path(max_length=500)], counter: TheCounter
) -> Response:
    """Show the record of a container as it would be typed."""
    with counter.reading() as connection:
        record = load_container(connection, number)
    return _show(request, FilledForm(write_values(record)), record)


@router.post("/edit/container", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def keep(
    request: Request,
    acting: ThePageActing,
    typed: TheTyped,
    tag: Annotated[str, Form(max_length=200)] = "",
) -> Response:
    """Keep a changed record; where somebody else was quicker, show both.

    Raises:
        RefusedError: When the form is none of ours.
    """
    with acting.counter.reading() as connection:
        was = load_container(connection, typed.number)
        read = read_container(typed.fields, was=was)
        faults = {**find_odd_nesting(connection, read.record), **read.faults}
    if not faults:
        try:
            with acting.counter.writing() as connection:
                change_record(
                    connection, read.record, typed.number, if_match=tag, stamp=acting.stamp
                )
        except RefusedError as error:
            if error.code is not Refusal.STALE:
                raise
            faults = {"": said(_WAS_CHANGED)}
        else:
            return go_to(
                page_of_container(typed.number),
                Notice(say("{number} is changed.", number=typed.number)),
            )
    return _show(request, FilledForm(typed.fields, faults), was)


def _show(request: Request, form: FilledForm, record: ContainerRecord | None = None) -> Response:
    """Show the form; `record` is what is kept now, None for a new one."""
    now = {} if record is None else write_values(record)
    is_stale = form.faults.get("") == said(_WAS_CHANGED)
    theirs = {name: text for name, text in now.items() if form.value(name) != text}
    values = {
        "form": form,
        "number": record.container_number if record else "",
        "tag": _tag(form, record, is_stale=is_stale),
        "theirs": theirs if is_stale else {},
        "kinds": list_kinds(),
        "lids": list_lids(),
    }
    return show_page(request, "containers/edit.html", values, status=form.status)


def _tag(form: FilledForm, record: ContainerRecord | None, *, is_stale: bool) -> str:
    """Give the state that the form begins with: whoever was told of a conflict has seen the new."""
    if record is None:
        return ""
    return tag_record(record) if is_stale else form.value("tag", tag_record(record))
