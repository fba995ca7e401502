"""What is changed most often, right on the page of a container: where it stands, what it weighs."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated

from fastapi import APIRouter, Form, Request, Response

from service.languages.saying import say
from service.records.record import ContainerRecord
from service.store.load_records import load_container
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.replies.refusals import Refusal, RefusedError
from service.web.store.asking import Acting
from service.web.store.matching import tag_record
from service.web.store.records.changing import change_record
from service.web.views.containers.asked import Asked, Trouble
from service.web.views.containers.page import show_container
from service.web.views.containers.record.read import read_container
from service.web.views.containers.record.values import write_values
from service.web.views.shell.addresses import page_of_container
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.notice import Notice, Undo, go_to
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)

LOCATION_PATH, WEIGHT_PATH = "/edit/location", "/edit/weight"
_Number = Annotated[str, Form(max_length=500)]
_Tag = Annotated[str, Form(max_length=200)]
_Text = Annotated[str, Form(max_length=2000)]


@router.post(LOCATION_PATH, include_in_schema=False, dependencies=[needs(Role.PACK)])
def keep_location(
    request: Request, acting: ThePageActing, number: _Number, tag: _Tag, location: _Text = ""
) -> Response:
    """Say where a container stands from now on."""
    return _keep(request, acting, number, {"tag": tag, "location": location})


@router.post(WEIGHT_PATH, include_in_schema=False, dependencies=[needs(Role.PACK)])
def keep_weight(
    request: Request, acting: ThePageActing, number: _Number, tag: _Tag, gross_weight: _Text = ""
) -> Response:
    """Say what a container weighs with all that lies in it now."""
    return _keep(request, acting, number, {"tag": tag, "gross_weight": gross_weight})


def _keep(request: Request, acting: Acting, number: str, sent: Mapping[str, str]) -> Response:
    """Change the one field that was sent.

    Raises:
        RefusedError: When the form is none of ours.
    """
    (name,) = sent.keys() - {"tag"}
    with acting.counter.reading() as connection:
        was = load_container(connection, number)
    shown = write_values(was)
    read = read_container({**shown, name: sent[name]}, was=was)
    faults = dict(read.faults)
    if not faults:
        try:
            return _change(acting, was, read.record, name, sent["tag"])
        except RefusedError as error:
            if error.code is not Refusal.STALE:
                raise
            now = shown[name] or "nothing"
            faults = {
                name: say(
                    "It was changed meanwhile. It says now: {now}. Send yours again.", now=now
                )
            }
    trouble = Trouble(request.url.path, FilledForm(dict(sent), faults))
    return show_container(request, acting.counter, number, Asked(), trouble)


def _change(
    acting: Acting, was: ContainerRecord, wanted: ContainerRecord, name: str, tag: str
) -> Response:
    number = was.container_number
    with acting.counter.writing() as connection:
        kept = change_record(connection, wanted, number, if_match=tag, stamp=acting.stamp)
    path = LOCATION_PATH if name == "location" else WEIGHT_PATH
    fields = {"number": number, "tag": tag_record(kept), name: write_values(was)[name]}
    now = write_values(kept)[name] or say("not known")
    words = (
        say("Its place is now: {now}.", now=now)
        if name == "location"
        else say("Its weight is now: {now}.", now=now)
    )
    return go_to(page_of_container(number), Notice(words, Undo(path, fields)))
