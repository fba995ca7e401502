"""Forms of an object's record: a new one, and one that is changed."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated

from fastapi import APIRouter, Depends, Path, Query, Request, Response

from service.handling.cautions import find_caution
from service.handling.hazards import find_hazard
from service.keeping.checks.gone_hazards import note_gone_hazards
from service.languages.saying import said, say
from service.records.codes import CAUTION_CODES, HANG_FACTOR_CODES
from service.records.record import ObjectRecord
from service.sentence import Sentence
from service.store.load_records import load_object
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.replies.refusals import Refusal, RefusedError
from service.web.store.asking import TheCounter
from service.web.store.matching import tag_record
from service.web.store.records.changing import add_record, change_record
from service.web.views.language.choices import list_hazards, list_states
from service.web.views.language.tables import spell
from service.web.views.objects.record.read import Typed, gather_typed, read_object
from service.web.views.objects.record.values import write_hazard, write_values
from service.web.views.shell.addresses import page_of_object
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.notice import Notice, go_to
from service.web.views.shell.page import show_page
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)

_ADD_ROW = "add"
_WAS_CHANGED = Sentence(
    "Somebody else has changed this meanwhile. Compare, then keep yours or theirs."
)
_EMPTY_ROW: Mapping[str, str] = {}


async def _typed(request: Request) -> Typed:
    form = await request.form()
    return gather_typed([(key, text) for key, text in form.multi_items() if isinstance(text, str)])


TheTyped = Annotated[Typed, Depends(_typed)]


@router.get("/new/object", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def new(request: Request, number: Annotated[str, Query(max_length=500)] = "") -> Response:
    """Ask for all that is known of a new object; its number is enough."""
    return _show(request, Typed(write_values(ObjectRecord(number))))


@router.post("/new/object", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def add(request: Request, acting: ThePageActing, typed: TheTyped) -> Response:
    """Keep a new object."""
    if typed.values.get(_ADD_ROW):
        return _show(request, typed)
    read = read_object(typed)
    faults = dict(read.faults)
    if not faults:
        try:
            with acting.counter.writing() as connection:
                add_record(connection, read.record, stamp=acting.stamp)
        except RefusedError as error:
            faults = {"object_number": said(error.detail)}
        else:
            return go_to(
                page_of_object(typed.number), Notice(say("{number} is kept.", number=typed.number))
            )
    return _show(request, typed, faults=faults)


@router.get(
    "/edit/object/{number:path}", include_in_schema=False, dependencies=[needs(Role.MANAGE)]
)
def edit(
    request: Request, number: Annotated[str, Path(max_length=500)], counter: TheCounter
) -> Response:
    """Show the record of an object as it would be typed."""
    with counter.reading() as connection:
        record = load_object(connection, number)
    rows = tuple(write_hazard(hazard) for hazard in record.hazards)
    return _show(request, Typed(write_values(record), rows), record)


@router.post("/edit/object", include_in_schema=False, dependencies=[needs(Role.MANAGE)])
def keep(request: Request, acting: ThePageActing, typed: TheTyped) -> Response:
    """Keep a changed record; where somebody else was quicker, show both.

    Raises:
        RefusedError: When the form is none of ours.
    """
    with acting.counter.reading() as connection:
        was = load_object(connection, typed.number)
    if typed.values.get(_ADD_ROW):
        return _show(request, typed, was)
    # Rows of hazards are told from each other by their order, which another state may not have.
    if typed.values.get("tag") != tag_record(was):
        return _show(request, typed, was, faults={"": said(_WAS_CHANGED)})
    read = read_object(typed, was=was)
    if read.faults:
        return _show(request, typed, was, faults=read.faults)
    tag, stamp = typed.values["tag"], acting.stamp
    try:
        with acting.counter.writing() as connection:
            change_record(connection, read.record, typed.number, if_match=tag, stamp=stamp)
            note_gone_hazards(connection, typed.number, read.gone, stamp=stamp)
    except RefusedError as error:
        told = said(_WAS_CHANGED if error.code is Refusal.STALE else error.detail)
        with acting.counter.reading() as connection:
            was = load_object(connection, typed.number)
        return _show(request, typed, was, faults={"": told})
    return go_to(
        page_of_object(typed.number), Notice(say("{number} is changed.", number=typed.number))
    )


def _show(
    request: Request,
    typed: Typed,
    record: ObjectRecord | None = None,
    *,
    faults: Mapping[str, str] | None = None,
) -> Response:
    """Show the form; `record` is what is kept now, None for a new one."""
    form = FilledForm(typed.values, faults or {})
    is_stale = form.faults.get("") == said(_WAS_CHANGED)
    now = write_values(record) if record else {}
    recorded = record.hazards if record else ()
    # After a conflict the rows begin with those that are recorded now, then come the new ones.
    rows = typed.rows
    if is_stale:
        new_rows = [row for row in rows if row.get("code") not in {one.code for one in recorded}]
        rows = (*map(write_hazard, recorded), *new_rows)
    values = {
        "form": form,
        "number": record.object_number if record else "",
        "tag": tag_record(record) if record else "",
        "theirs": {
            name: text for name, text in now.items() if is_stale and form.value(name) != text
        },
        "rows": [*rows, _EMPTY_ROW],
        "recorded": [said(find_hazard(one.code).name) for one in recorded],
        "gone": frozenset() if is_stale else typed.gone,
        "hazards": list_hazards(),
        "states": list_states(),
        "cautions": _choices(CAUTION_CODES, form.value("cautions")),
        "other_cautions": _others(CAUTION_CODES, form.value("cautions")),
        "hang_factors": _choices(HANG_FACTOR_CODES, form.value("hang_factors")),
        "other_hang_factors": _others(HANG_FACTOR_CODES, form.value("hang_factors")),
    }
    return show_page(request, "objects/edit.html", values, status=form.status)


def _split(text: str) -> list[str]:
    return [part.strip() for part in text.split(";") if part.strip()]


def _choices(codes: tuple[str, ...], chosen: str) -> list[tuple[str, str, bool]]:
    """Give each code with its words, and whether it is ticked."""
    ticked = _split(chosen)
    is_caution = codes is CAUTION_CODES
    return [
        (code, said(find_caution(code).name if is_caution else spell(code)), code in ticked)
        for code in codes
    ]


def _others(codes: tuple[str, ...], chosen: str) -> str:
    """Give what was written in the museum's own words."""
    return "; ".join(part for part in _split(chosen) if part not in codes)
