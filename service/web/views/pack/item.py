"""Takes one thing in from the table: from its form, or from the queue of a phone."""

from __future__ import annotations

from collections.abc import AsyncIterator, Mapping
from dataclasses import dataclass
from typing import Annotated

from fastapi import APIRouter, Depends, Request, Response
from fastapi.exceptions import RequestValidationError
from pydantic import BaseModel, Field, StringConstraints, ValidationError
from starlette.datastructures import UploadFile

from service.errors import PackedElsewhereError, ServiceError
from service.keeping.table.put_down import TableItem
from service.languages.saying import said, say
from service.records.record import Hazard, HazardState, PhotoRole, PlaceRecord
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.replies.accept import choose_media_type
from service.web.replies.problems import is_inner
from service.web.replies.refusals import Refusal, RefusedError
from service.web.store.asking import Asked
from service.web.store.counter import Counter
from service.web.store.packings.items import ItemView, SentPhoto, take_item
from service.web.views.language.telling import tell_error
from service.web.views.pack.addresses import page_of_table
from service.web.views.pack.table import show_table
from service.web.views.pack.undo import undo_item
from service.web.views.shell.forms import WHOLE, FilledForm
from service.web.views.shell.notice import Notice, go_to
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)

PATH = "/pack/item"
Text = Annotated[str, StringConstraints(max_length=1000)]
_OFFERED = ("application/json", "application/problem+json", "text/html")


class ItemFields(BaseModel):
    """The fields of the table's form; what is left empty is not known."""

    container: Text = ""
    key: Annotated[str, StringConstraints(max_length=200)] = ""
    object_number: Annotated[str, StringConstraints(max_length=1000, strip_whitespace=True)] = ""
    title: Text = ""
    layer: int = Field(default=1, ge=1, le=1000)
    note: Text = ""
    hazard: Text = ""
    hazard_state: HazardState = HazardState.UNCHECKED
    hazard_note: Text = ""
    move: bool = False
    role: PhotoRole = PhotoRole.FRONT


@dataclass(frozen=True, slots=True)
class SentItem:
    """What was sent: the fields as typed, and the photo, which either input may hold."""

    typed: Mapping[str, str]
    photo: UploadFile | None


async def _sent(request: Request) -> AsyncIterator[SentItem]:
    """Read the form, and close its files when all is done."""
    async with request.form() as form:
        typed = {name: text for name, text in form.items() if isinstance(text, str)}
        files = [form.get(name) for name in ("photo", "gallery")]
        photos = [one for one in files if isinstance(one, UploadFile) and one.size]
        yield SentItem(typed, photos[0] if photos else None)


@router.post(PATH, include_in_schema=False, dependencies=[needs(Role.PACK)])
def put_item_down(
    request: Request, acting: ThePageActing, sent: Annotated[SentItem, Depends(_sent)]
) -> Response:
    """Put one thing into the container; the queue is answered with data, a form with its page.

    Raises:
        RequestValidationError: When a field of the queue cannot be read.
        RefusedError: When what the queue sent cannot be taken.
        ServiceError: Likewise, and when the service itself is at fault.
    """
    accept = request.headers.get("accept", "*/*")
    is_page = choose_media_type(accept, _OFFERED) == "text/html"
    try:
        fields = ItemFields.model_validate(dict(sent.typed))
        asked = Asked(acting.counter, acting.stamp, fields.key, PATH)
        answer = take_item(asked, _item(fields), _photo(fields, sent.photo))
    except ValidationError as error:
        if not is_page:
            raise RequestValidationError(error.errors()) from error
        return _again(request, acting.counter, sent, _tell_invalid(error))
    except (RefusedError, ServiceError) as error:
        if not is_page or (isinstance(error, ServiceError) and is_inner(type(error))):
            raise
        return _again(request, acting.counter, sent, _tell(error))
    if not is_page:
        return answer
    done = ItemView.model_validate_json(bytes(answer.body))
    return go_to(page_of_table(done.container_number, layer=done.layer), tell_item(done))


def tell_item(done: ItemView) -> Notice:
    """Tell what was put in, with the way back."""
    number = done.object_number
    if done.before == done.revision:
        words = say("Another photo of {number} is kept.", number=number)
    elif done.moved_from:
        origin = done.moved_from
        words = say("{number} is in; it was taken out of {origin}.", number=number, origin=origin)
    elif done.is_new:
        words = say("{number} is in, with a new record.", number=number)
    else:
        words = say("{number} is in.", number=number)
    return Notice(words, undo_item(done))


def _item(fields: ItemFields) -> TableItem:
    hazard = None
    if fields.hazard:
        hazard = Hazard(fields.hazard, fields.hazard_state, fields.hazard_note)
    place = PlaceRecord(fields.object_number, layer=fields.layer, note=fields.note)
    title = " ".join(fields.title.split())
    return TableItem(fields.container, place, title, hazard, fields.move)


def _photo(fields: ItemFields, photo: UploadFile | None) -> SentPhoto | None:
    return SentPhoto(photo, fields.role) if photo else None


def _again(
    request: Request, counter: Counter, sent: SentItem, faults: Mapping[str, str]
) -> Response:
    """Show the form as it was filled in; a photo has to be chosen again, as browsers want it."""
    told = dict(faults)
    if sent.photo is not None and "photo" not in told:
        told["photo"] = say("Choose the photo once more: it was not kept.")
    form = FilledForm(sent.typed, told)
    return show_table(request, counter, sent.typed.get("container", ""), form=form)


def _tell_invalid(error: ValidationError) -> dict[str, str]:
    """Tell of each field that could not be read."""
    names = [str(fault["loc"][0]) for fault in error.errors()]
    known = {"layer": say("Layers are counted from 1, the top one.")}
    unread = say("This is too long, or cannot be read.")
    return {name: known.get(name, unread) for name in names}


def _tell(error: RefusedError | ServiceError) -> dict[str, str]:
    """Tell what is wrong beside the field that it concerns."""
    if isinstance(error, PackedElsewhereError):
        words = say(
            "{number} lies in {container}. Tick below to move it here.",
            number=error.object_number,
            container=error.lies_in,
        )
        return {"object_number": words}
    if isinstance(error, ServiceError):
        return {WHOLE: tell_error(error)}
    name, words = error.detail.partition(": ")[0], said(error.detail).partition(": ")[2]
    told = {
        "photo": {"photo": say("{words} Choose another photo.", words=words)},
        "record": {"object_number": say("It needs a number: the one on the object or its tag.")},
    }
    if error.code is Refusal.KEY_USED:
        return {WHOLE: say("This was sent before. Look at what lies in it, then send it again.")}
    return told.get(name, {WHOLE: said(error.detail)})
