"""The path of the packing table: one thing with its photo, all of it or nothing, and only once."""

from __future__ import annotations

import hashlib
import shutil
import tempfile
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Annotated

from fastapi import APIRouter, File, Response, UploadFile
from pydantic import BaseModel, ConfigDict, Field, StringConstraints
from starlette.datastructures import UploadFile as SentFile

from service.keeping.checks.packings import check_container
from service.keeping.photos.sources import FILE_LIMIT_BYTES
from service.keeping.table.photo import keep_photo
from service.keeping.table.put_down import PutDown, TableItem, TablePhoto, put_down
from service.records.codes import HAZARD_CODES
from service.records.record import Hazard, HazardState, PhotoRole, PlaceRecord
from service.sentence import Sentence
from service.store.handles import Connection
from service.store.history import Stamp
from service.store.people.role import Role
from service.store.shelf.files import StoredFile
from service.web.access.gate import GatedRoute, needs
from service.web.replies.problems import FindingView, show_findings
from service.web.replies.refusals import Refusal, RefusedError
from service.web.store.asking import Asked, ContainerNumber, TheAsked
from service.web.store.counter import Counter
from service.web.store.once import Made, find_again, make_once
from service.web.store.packings.shapes import Number
from service.web.store.records.changing import refuse_odd
from service.web.store.records.shapes import STRICT

router = APIRouter(route_class=GatedRoute)

_PORTION_BYTES = 1 << 20
Short = Annotated[str, StringConstraints(max_length=1000)]


class ItemForm(BaseModel):
    """One thing for a container, as a form: its number, and what is known of it."""

    model_config = STRICT | ConfigDict(
        json_schema_extra={
            "examples": [
                {
                    "object_number": "2026.3.1",
                    "title": "Net needle",
                    "layer": "1",
                    "hazard": "sharps",
                    "hazard_state": "presumed",
                    "photo": ["X.112_front.jpg"],
                }
            ]
        }
    )

    object_number: Number
    title: Short = Field(default="", description="Taken where the record has none.")
    layer: int = Field(default=1, ge=1, le=1000)
    compartment: Short = ""
    note: Short = ""
    hazard: str = Field(default="", description="Empty where nothing is known.")
    hazard_state: HazardState = HazardState.UNCHECKED
    hazard_note: Short = ""
    move: bool = Field(default=False, description="Take it out of where it lies now.")
    role: PhotoRole = PhotoRole.FRONT
    photo: UploadFile | None = None


class ItemView(BaseModel):
    """What came of one thing: the container as it is now, and what is noticed there.

    `before` is its revision before, the same where only a photo came; `photo_sha256` is empty
    where the photo was known; `moved_from` names the container it was taken out of.
    """

    container_number: str
    object_number: str
    layer: int
    before: int
    revision: int
    is_new: bool
    photo_sha256: str
    moved_from: str
    moved_before: int
    findings: list[FindingView]


@dataclass(frozen=True, slots=True)
class SentPhoto:
    """A photo as it came, and which side it shows."""

    upload: SentFile
    role: PhotoRole = PhotoRole.FRONT

    @property
    def sha256(self) -> str:
        """The hash of its bytes."""
        self.upload.file.seek(0)
        digest = hashlib.sha256()
        while portion := self.upload.file.read(_PORTION_BYTES):
            digest.update(portion)
        return digest.hexdigest()


@router.post(
    "/api/containers/{number:path}/items",
    dependencies=[needs(Role.PACK)],
    status_code=201,
    response_model=ItemView,
)
def put_item(
    number: ContainerNumber, form: Annotated[ItemForm, File()], asked: TheAsked
) -> Response:
    """Put one thing into a container with its photo; a number that is new becomes a record.

    It is added to whatever lies there by then, so no ETag is needed. What lies in the container
    already gets the photo, or another layer. Sent again under its key, nothing arrives twice.
    """
    place = PlaceRecord(
        form.object_number.strip(),
        layer=form.layer,
        compartment=form.compartment,
        note=form.note,
    )
    item = TableItem(number, place, form.title, is_moved=form.move)
    if form.hazard:
        found = Hazard(form.hazard, form.hazard_state, form.hazard_note)
        item = replace(item, hazard=found)
    photo = SentPhoto(form.photo, form.role) if form.photo else None
    return take_item(asked, item, photo)


def take_item(asked: Asked, item: TableItem, sent: SentPhoto | None) -> Response:
    """Take one thing in and answer; the same under the same key gets the first answer again.

    Raises:
        RefusedError: When the number or hazard is none, or the photo cannot be used.
        NotFoundError: When there is no such container.
        PackedElsewhereError: When it lies elsewhere and is not to be moved.
    """
    refuse_odd(item.place.object_number)
    if item.hazard is not None and item.hazard.code not in HAZARD_CODES:
        detail = Sentence("hazard: {code!a} is no known hazard", code=item.hazard.code[:80])
        raise RefusedError(Refusal.UNUSABLE_FIELD, detail)
    told = f"{item!r} {sent.sha256} {sent.role}" if sent else repr(item)
    with asked.counter.reading() as connection:
        again = find_again(connection, asked, told)
    if again is not None:
        return again
    photo = None if sent is None else TablePhoto(_keep(asked.counter, sent.upload), sent.role)

    def make(connection: Connection) -> Made:
        done = put_down(connection, _dated(item, asked.stamp), photo, stamp=asked.stamp)
        return Made(_show(connection, asked, item, done))

    return make_once(asked, told, make)


def _dated(item: TableItem, stamp: Stamp) -> TableItem:
    """Say who confirmed a hazard, and when: what is only presumed was not looked into."""
    if item.hazard is None or item.hazard.state is not HazardState.CONFIRMED:
        return item
    found = replace(item.hazard, checked_on=stamp.at.date(), checked_by=stamp.actor)
    return replace(item, hazard=found)


def _keep(counter: Counter, upload: SentFile) -> StoredFile:
    """Put a photo on the shelf.

    Raises:
        RefusedError: When it is too large, or cannot be opened.
    """
    if (upload.size or 0) > FILE_LIMIT_BYTES:
        raise RefusedError(Refusal.TOO_LARGE, _of_photo(Sentence("it is larger than 25 MB")))
    with counter.working() as desk, tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "photo"
        upload.file.seek(0)
        with path.open("wb") as target:
            shutil.copyfileobj(upload.file, target)
        stored, findings = keep_photo(desk, path, named=upload.filename or "")
    if stored is None:
        raise RefusedError(Refusal.UNUSABLE_FIELD, _of_photo(findings[0].message))
    return stored


def _of_photo(words: str) -> Sentence:
    """Say it of the field, by whose name programs and pages find it in every language."""
    return Sentence("{field}: {words}", field="photo", words=Sentence(words))


def _show(connection: Connection, asked: Asked, item: TableItem, done: PutDown) -> ItemView:
    number = item.container_number
    found = check_container(connection, number, today=asked.stamp.at.date())
    return ItemView(
        container_number=number,
        object_number=item.place.object_number,
        layer=item.place.layer,
        before=done.before,
        revision=done.packing.revision,
        is_new=done.is_new,
        photo_sha256=done.photo_sha256,
        moved_from=done.moved_from,
        moved_before=done.moved_before,
        findings=show_findings(found),
    )
