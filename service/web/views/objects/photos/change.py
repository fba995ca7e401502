"""Shows a photo otherwise: turned, cropped, as another side, elsewhere in the order, or not."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Form, Request, Response
from pydantic import BaseModel, Field

from service.errors import PictureError, UnusableCropError
from service.keeping.photos.shown import PhotoChange, change_photo
from service.languages.saying import say
from service.records.record import PhotoRole
from service.store.people.role import Role
from service.store.shelf.shown import ShownPhoto, find_shown, load_shown_of, order_photos
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import Acting
from service.web.views.language.telling import tell_error
from service.web.views.objects.photos.cuts import EDGES, read_cuts, write_cuts
from service.web.views.objects.photos.page import page_of_shown, show_photo_page
from service.web.views.shell.addresses import page_of_object
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.notice import Notice, Undo, go_to
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)

CHANGE, CROP, MOVE = "/photo/change", "/photo/crop", "/photo/move"
_Number = Annotated[str, Form(max_length=500)]
_Sha = Annotated[str, Form(max_length=64)]
_Cut = Annotated[str, Form(max_length=20)]


class ChangeFields(BaseModel):
    """What is to become of a photo; what is left out stays."""

    number: str = Field(max_length=500)
    photo: str = Field(max_length=64)
    turns: int | None = Field(default=None, ge=0, le=3)
    role: PhotoRole | None = None
    is_printed: bool | None = None
    is_removed: bool | None = None


@router.post(CHANGE, include_in_schema=False, dependencies=[needs(Role.PACK)])
def change(acting: ThePageActing, fields: Annotated[ChangeFields, Form()]) -> Response:
    """Turn a photo, say what it shows, keep it off cards, remove it, or take that back."""
    was = _find(acting, fields.number, fields.photo)
    wanted = PhotoChange(
        turns=fields.turns,
        role=fields.role,
        is_printed=fields.is_printed,
        is_removed=fields.is_removed,
    )
    with acting.counter.working() as desk:
        change_photo(desk, fields.number, fields.photo, wanted, stamp=acting.stamp)
    undo = Undo(CHANGE, _fields_before(fields, was))
    is_gone = fields.is_removed is True
    page = page_of_object if is_gone else lambda number: page_of_shown(number, fields.photo)
    return go_to(page(fields.number), Notice(_tell(fields), undo))


@router.post(CROP, include_in_schema=False, dependencies=[needs(Role.PACK)])
def crop(  # noqa: PLR0913 - one for each edge
    *,
    request: Request,
    acting: ThePageActing,
    number: _Number,
    photo: _Sha,
    left: _Cut = "",
    top: _Cut = "",
    right: _Cut = "",
    bottom: _Cut = "",
) -> Response:
    """Show a part of a photo; with nothing cut away, the whole of it again."""
    typed = dict(zip(EDGES, (left, top, right, bottom), strict=True))
    ratios, faults = read_cuts(typed)
    was = _find(acting, number, photo)
    if not faults:
        try:
            with acting.counter.working() as desk:
                wanted = PhotoChange(crop=ratios)
                change_photo(desk, number, photo, wanted, stamp=acting.stamp)
        except (UnusableCropError, PictureError) as error:
            faults = {"": tell_error(error)}
    if faults:
        form = FilledForm(typed, faults)
        return show_photo_page(request, acting.counter, number, photo, form)
    undo = Undo(CROP, {"number": number, "photo": photo, **write_cuts(was.edit.crop)})
    return go_to(page_of_shown(number, photo), Notice(say("The photo is cropped."), undo))


@router.post(MOVE, include_in_schema=False, dependencies=[needs(Role.PACK)])
def move(
    acting: ThePageActing,
    number: _Number,
    photo: _Sha,
    to: Annotated[int, Form(ge=0, le=1000)],
) -> Response:
    """Put a photo at another place among those of its object, counted from 0."""
    with acting.counter.writing() as connection:
        order = [one.sha256 for one in load_shown_of(connection, number) if not one.is_removed]
        before = order.index(photo) if photo in order else 0
        wanted = [sha256 for sha256 in order if sha256 != photo]
        wanted.insert(to, photo)
        order_photos(connection, number, wanted, stamp=acting.stamp)
    undo = Undo(MOVE, {"number": number, "photo": photo, "to": str(before)})
    return go_to(
        page_of_shown(number, photo), Notice(say("The photos are in another order."), undo)
    )


def _find(acting: Acting, number: str, sha256: str) -> ShownPhoto:
    with acting.counter.reading() as connection:
        return find_shown(connection, number, sha256)


def _fields_before(fields: ChangeFields, was: ShownPhoto) -> dict[str, str]:
    """Give the form that takes just this change back."""
    before = {
        "turns": str(was.edit.turns),
        "role": was.role.value,
        "is_printed": str(was.is_printed).lower(),
        "is_removed": str(was.is_removed).lower(),
    }
    said = {name for name in before if getattr(fields, name) is not None}
    kept = {name: text for name, text in before.items() if name in said}
    return {"number": fields.number, "photo": fields.photo, **kept}


def _tell(fields: ChangeFields) -> str:
    said_of = {
        say("The photo is removed from its object; its file is kept."): fields.is_removed is True,
        say("The photo is back."): fields.is_removed is False,
        say("The photo is kept off cards."): fields.is_printed is False,
        say("Cards may show the photo."): fields.is_printed is True,
        say("The photo is turned."): fields.turns is not None,
        say("The photo shows the front."): fields.role is PhotoRole.FRONT,
        say("The photo shows the back."): fields.role is PhotoRole.BACK,
        say("The photo shows the detail."): fields.role is PhotoRole.DETAIL,
    }
    return next((words for words, is_it in said_of.items() if is_it), say("Nothing was changed."))
