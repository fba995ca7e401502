"""The path of photos in bulk."""

from __future__ import annotations

import shutil
import tempfile
import zipfile
from collections.abc import Sequence
from pathlib import Path
from typing import Annotated

from fastapi import APIRouter, File, UploadFile
from pydantic import BaseModel, ConfigDict, Field

from service.keeping.photos.bring import BroughtPhotos, bring_in_bulk
from service.records.record import PhotoRole
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.replies.problems import FindingView, show_findings
from service.web.store.asking import TheActing
from service.web.store.records.shapes import STRICT

router = APIRouter(route_class=GatedRoute)

NAME = "photos.zip"


class PhotosForm(BaseModel):
    """Photos as files, or one ZIP file of them; what they are called says what they show."""

    model_config = STRICT | ConfigDict(
        json_schema_extra={"examples": [{"photos": ["X.112_front.jpg"]}]}
    )

    photos: list[UploadFile] = Field(
        min_length=1, description="Photos named after their objects, or one ZIP file."
    )


class MatchedView(BaseModel):
    """A photo and the object it shows."""

    file: str
    object_number: str
    role: PhotoRole


class BroughtView(BaseModel):
    """What came of the photos: each with its object, how many were new, and what was noticed."""

    matched: list[MatchedView]
    new: int
    findings: list[FindingView]


@router.post("/api/photos", dependencies=[needs(Role.PACK)])
def bring_photos(form: Annotated[PhotosForm, File()], acting: TheActing) -> BroughtView:
    """Bring photos; each goes to the objects whose number its name holds, or that name it.

    The same photos again change nothing. A photo that fits no object, or several, is told of and
    given to none.
    """
    with (
        acting.counter.working() as desk,
        tempfile.TemporaryDirectory(dir=desk.workshop.scratch_folder) as folder,
    ):
        packed = Path(folder) / NAME
        pack_photos(form.photos, packed)
        return _show(bring_in_bulk(desk, packed, stamp=acting.stamp))


def pack_photos(photos: Sequence[UploadFile], target: Path) -> None:
    """Write one ZIP file, whose names never become paths; a ZIP file that was sent is taken."""
    if len(photos) == 1 and (photos[0].filename or "").casefold().endswith(".zip"):
        with target.open("wb") as file:
            shutil.copyfileobj(photos[0].file, file)
        return
    with zipfile.ZipFile(target, "w") as packed:
        for photo in photos:
            entry = zipfile.ZipInfo(photo.filename or "photo")
            with packed.open(entry, "w", force_zip64=True) as file:
                shutil.copyfileobj(photo.file, file)


def _show(brought: BroughtPhotos) -> BroughtView:
    return BroughtView(
        matched=[
            MatchedView(file=one.file, object_number=one.object_number, role=one.role)
            for one in brought.matched
        ],
        new=brought.new,
        findings=show_findings(brought.findings),
    )
