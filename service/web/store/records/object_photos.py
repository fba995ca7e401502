"""Paths of the photos of one object: which it shows, how, and their pictures for a browser."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass
from typing import Annotated

from fastapi import APIRouter, Depends, Header, Path, Query, Response
from pydantic import BaseModel, ConfigDict, Field

from service.keeping.photos.pictures import WantedPicture, find_picture, make_picture
from service.keeping.photos.shown import PhotoChange, change_photo
from service.records.record import PhotoRole
from service.store.people.role import Role
from service.store.shelf.shown import ShownPhoto, find_shown, load_shown_of, order_photos
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import Acting, ObjectNumber, SeenRecord, TheActing, TheCounter
from service.web.store.matching import refuse_other, tag_text
from service.web.store.records.shapes import STRICT

router = APIRouter(route_class=GatedRoute)

PhotoSha = Annotated[
    str,
    Path(
        pattern="^[0-9a-f]{64}$",
        description="The SHA-256 of the photo's file.",
        examples=["eabbfd3a7ee3f83afcd64b2e77a9629a7bc77faa31635ea0e7d6334208a5c451"],
    ),
]
Ratio = Annotated[float, Field(ge=0, le=1)]


@dataclass(frozen=True, slots=True)
class Changing:
    """Who changes a photo, and from which state."""

    acting: Acting
    if_match: str


def _changing(acting: TheActing, if_match: SeenRecord = "") -> Changing:
    return Changing(acting, if_match)


TheChanging = Annotated[Changing, Depends(_changing)]


class CropView(BaseModel):
    """A part of the upright photo before it is turned, in shares of its width and height."""

    model_config = STRICT

    left: Ratio
    top: Ratio
    right: Ratio
    bottom: Ratio


class PhotoView(BaseModel):
    """A photo of an object and how it is shown; `turns` counts quarter turns clockwise.

    `crop` is None where the whole photo is shown. One that `is_removed` keeps its file and can be
    put back.
    """

    sha256: str
    file: str
    role: PhotoRole
    turns: int
    crop: CropView | None
    is_printed: bool
    is_removed: bool


class PhotosView(BaseModel):
    """The photos of an object, in the order in which it shows them."""

    object_number: str
    photos: list[PhotoView]


class PhotoChangeBody(BaseModel):
    """What is to become of a photo; what is left out stays.

    Give `left` 0, `top` 0, `right` 1 and `bottom` 1 to show the whole photo again.
    """

    model_config = STRICT | ConfigDict(
        json_schema_extra={"examples": [{"turns": 1, "role": "back"}]}
    )

    turns: int | None = Field(default=None, ge=0, le=3)
    crop: CropView | None = None
    role: PhotoRole | None = None
    is_printed: bool | None = None
    is_removed: bool | None = None


class PhotoOrderBody(BaseModel):
    """The photos of an object by SHA-256, in the order wanted; others come behind."""

    model_config = STRICT | ConfigDict(json_schema_extra={"examples": [{"order": []}]})

    order: list[str] = Field(max_length=1000)


@router.get("/api/objects/{number:path}/photos", dependencies=[needs(Role.VIEW)])
def photos_of_object(number: ObjectNumber, response: Response, counter: TheCounter) -> PhotosView:
    """List the photos of an object that were brought; the ETag is needed to order them."""
    with counter.reading() as connection:
        view = _show_all(number, load_shown_of(connection, number))
    response.headers["ETag"] = _tag(view)
    return view


@router.put("/api/objects/{number:path}/photos", dependencies=[needs(Role.PACK)])
def put_in_order(
    number: ObjectNumber,
    body: PhotoOrderBody,
    response: Response,
    acting: TheActing,
    if_match: SeenRecord = "",
) -> PhotosView:
    """Put the photos of an object in order: the first that shows the front stands on cards."""
    with acting.counter.writing() as connection:
        current = _show_all(number, load_shown_of(connection, number))
        yours: dict[str, object] = {"order": body.order}
        refuse_other(if_match, _tag(current), yours=yours, current=current.model_dump(mode="json"))
        view = _show_all(number, order_photos(connection, number, body.order, stamp=acting.stamp))
    response.headers["ETag"] = _tag(view)
    return view


@router.get("/api/objects/{number:path}/photos/{sha256}", dependencies=[needs(Role.VIEW)])
def photo_of_object(
    number: ObjectNumber, sha256: PhotoSha, response: Response, counter: TheCounter
) -> PhotoView:
    """Tell how an object shows a photo; the ETag is needed to change that."""
    with counter.reading() as connection:
        view = _show(find_shown(connection, number, sha256))
    response.headers["ETag"] = _tag(view)
    return view


@router.patch("/api/objects/{number:path}/photos/{sha256}", dependencies=[needs(Role.PACK)])
def show_otherwise(
    number: ObjectNumber,
    sha256: PhotoSha,
    body: PhotoChangeBody,
    response: Response,
    changing: TheChanging,
) -> PhotoView:
    """Turn or crop a photo, say what it shows, keep it off cards, remove it or put it back.

    The file is never changed. Cards that show it come on the reprint list.
    """
    acting = changing.acting
    with acting.counter.reading() as connection:
        current = _show(find_shown(connection, number, sha256))
    yours: dict[str, object] = body.model_dump(mode="json", exclude_none=True)
    tag, state = _tag(current), current.model_dump(mode="json")
    refuse_other(changing.if_match, tag, yours=yours, current=state)
    crop = body.crop
    change = PhotoChange(
        body.turns,
        (crop.left, crop.top, crop.right, crop.bottom) if crop else None,
        body.role,
        body.is_printed,
        body.is_removed,
    )
    with acting.counter.working() as desk:
        shown = change_photo(desk, number, sha256, change, stamp=acting.stamp)
    view = _show(shown)
    response.headers["ETag"] = _tag(view)
    return view


@router.get(
    "/api/photos/{sha256}",
    response_class=Response,
    responses={200: {"content": {"image/jpeg": {}}}},
    dependencies=[needs(Role.VIEW)],
)
def picture(
    sha256: PhotoSha,
    counter: TheCounter,
    width_px: Annotated[int, Query(ge=1, le=10_000)] = 640,
    shown_by: Annotated[
        str,
        Query(alias="object", max_length=500, description="As the cards of this object show it."),
    ] = "",
    known: Annotated[
        str,
        Header(
            alias="If-None-Match", max_length=2000, description="The ETag of the picture you have."
        ),
    ] = "",
) -> Response:
    """Give a photo as a JPEG without metadata: upright and whole, or as an object shows it.

    The nearest width that is made comes, never an enlarged one.
    """
    wanted = WantedPicture(sha256, width_px, shown_by)
    with counter.reading() as connection:
        jpeg = find_picture(connection, counter.cache_folder, wanted)
    if jpeg is None:
        with counter.working() as desk:
            jpeg = make_picture(desk, wanted)
    tag = hashlib.sha256(jpeg).hexdigest()[:32]
    # How an object shows its photo may change under the same address, so a browser asks each time.
    headers = {"ETag": f'"{tag}"', "Cache-Control": "private, no-cache"}
    if tag in known:
        return Response(status_code=304, headers=headers)
    return Response(jpeg, media_type="image/jpeg", headers=headers)


def _show_all(number: str, shown: tuple[ShownPhoto, ...]) -> PhotosView:
    return PhotosView(object_number=number, photos=[_show(one) for one in shown])


def _show(one: ShownPhoto) -> PhotoView:
    crop = one.edit.crop
    edges = dict(zip(("left", "top", "right", "bottom"), crop.ratios if crop else (), strict=False))
    return PhotoView(
        sha256=one.sha256,
        file=one.file,
        role=one.role,
        turns=one.edit.turns,
        crop=CropView.model_validate(edges) if edges else None,
        is_printed=one.is_printed,
        is_removed=one.is_removed,
    )


def _tag(view: PhotoView | PhotosView) -> str:
    return tag_text(view.model_dump_json())
