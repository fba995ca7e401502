"""The end of packing: what the container weighs, what it is packed with, and what was noticed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Annotated

from fastapi import APIRouter, Form, Path, Request, Response
from pydantic import BaseModel, Field

from service.keeping.checks.packings import check_container
from service.languages.saying import say
from service.records.cells.weights import read_weight
from service.records.record import ContainerRecord
from service.records.sources.columns import CONTAINER_COLUMNS
from service.store.load_records import load_container
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.replies.refusals import Refusal, RefusedError
from service.web.store.asking import Acting, TheCounter
from service.web.store.counter import Counter
from service.web.store.matching import tag_record
from service.web.store.records.changing import change_record
from service.web.views.containers.alike import show_few
from service.web.views.pack.addresses import page_of_packed
from service.web.views.pack.lying import load_lying
from service.web.views.shell.addresses import page_with
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.notice import Notice, Undo, go_to
from service.web.views.shell.page import show_page
from service.web.views.shell.reader import ThePageActing
from service.web.views.shell.typed import make_typed_row, tell_faults
from service.web.views.shell.weights import write_weight

router = APIRouter(route_class=GatedRoute)

WEIGH = "/pack/weigh"


class WeighFields(BaseModel):
    """What is asked at the end; each may be said to be not known."""

    number: str = Field(max_length=500)
    tag: str = Field(max_length=200)
    gross_weight: str = Field(default="", max_length=1000)
    weight_unknown: bool = False
    packing_materials: str = Field(default="", max_length=10_000)
    materials_unknown: bool = False


@router.get("/pack/packed/{number:path}", include_in_schema=False, dependencies=[needs(Role.PACK)])
def packed(
    request: Request, counter: TheCounter, number: Annotated[str, Path(max_length=500)]
) -> Response:
    """Show how the container is packed, what was noticed, and what its cards still need."""
    return _show(request, counter, number)


@router.post(WEIGH, include_in_schema=False, dependencies=[needs(Role.PACK)])
def weigh(
    request: Request, acting: ThePageActing, fields: Annotated[WeighFields, Form()]
) -> Response:
    """Keep gross weight and packing materials.

    Raises:
        RefusedError: When the form is none of ours.
    """
    with acting.counter.reading() as connection:
        was = load_container(connection, fields.number)
    wanted, faults = _read(fields, was)
    if not faults:
        try:
            return _keep(acting, was, wanted, fields.tag)
        except RefusedError as error:
            if error.code is not Refusal.STALE:
                raise
            faults = {
                "": say("It was changed meanwhile. Look at what it says now, then keep yours.")
            }
    return _show(request, acting.counter, fields.number, FilledForm(_typed(fields), faults))


def _read(fields: WeighFields, was: ContainerRecord) -> tuple[ContainerRecord, Mapping[str, str]]:
    """Read what was typed; what is neither typed nor said to be not known is asked again."""
    row, notebook = make_typed_row(
        {"gross_weight": fields.gross_weight, "packing_materials": fields.packing_materials},
        CONTAINER_COLUMNS,
    )
    gross = None if fields.weight_unknown else read_weight(row.cell("gross_weight"))
    listed = () if fields.materials_unknown else row.list_cell("packing_materials").texts()
    faults = {} if fields.weight_unknown else tell_faults(notebook)
    if gross is None and not fields.weight_unknown:
        faults.setdefault(
            "gross_weight", say("Weigh it with all that lies in it, or say not known.")
        )
    if not listed and not fields.materials_unknown:
        faults["packing_materials"] = say("Say what it is packed with, or say not known.")
    return replace(was, gross=gross, packing_materials=listed), faults


def _keep(acting: Acting, was: ContainerRecord, wanted: ContainerRecord, tag: str) -> Response:
    number = was.container_number
    with acting.counter.writing() as connection:
        kept = change_record(connection, wanted, number, if_match=tag, stamp=acting.stamp)
    before = {
        "number": number,
        "tag": tag_record(kept),
        **_values(was),
        "weight_unknown": "" if was.gross else "yes",
        "materials_unknown": "" if was.packing_materials else "yes",
    }
    undo = Undo(WEIGH, {name: text for name, text in before.items() if text})
    return go_to(page_of_packed(number), Notice(say("Weight and packing are kept."), undo))


def _show(
    request: Request, counter: Counter, number: str, form: FilledForm | None = None
) -> Response:
    today = counter.now().date()
    with counter.reading() as connection:
        lying = load_lying(connection, number)
        findings = check_container(connection, number, today=today)
    container = lying.container
    filled = form or FilledForm(_values(container))
    values = {
        "form": filled,
        "lying": lying,
        "tag": tag_record(container),
        "findings": list(show_few((*findings, *lying.lacking))),
        "print": page_with("/print", what="containers", containers=number),
    }
    return show_page(request, "pack/packed.html", values, status=filled.status)


def _values(record: ContainerRecord) -> dict[str, str]:
    return {
        "gross_weight": write_weight(record.gross),
        "packing_materials": "; ".join(record.packing_materials),
    }


def _typed(fields: WeighFields) -> dict[str, str]:
    said = fields.model_dump(include={"gross_weight", "packing_materials"})
    ticked = {
        name: "yes" for name in ("weight_unknown", "materials_unknown") if getattr(fields, name)
    }
    return said | ticked
