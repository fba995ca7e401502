"""Adds photos to an object, from its page."""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import AsyncIterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Annotated

from fastapi import APIRouter, Depends, Request, Response
from starlette.datastructures import UploadFile

from service.findings import Finding
from service.keeping.photos.sources import FILE_LIMIT_BYTES
from service.keeping.table.add_photos import add_photos
from service.languages.saying import say, say_many
from service.records.record import PhotoRole
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.store.asking import Acting
from service.web.views.language.telling import tell_finding
from service.web.views.objects.page import show_object
from service.web.views.shell.addresses import page_of_object
from service.web.views.shell.forms import FilledForm
from service.web.views.shell.notice import Notice, go_to
from service.web.views.shell.reader import ThePageActing

router = APIRouter(route_class=GatedRoute)


@dataclass(frozen=True, slots=True)
class SentPhotos:
    """Photos that were chosen for an object, and which side they show."""

    number: str
    role: PhotoRole
    files: tuple[UploadFile, ...]


async def _sent(request: Request) -> AsyncIterator[SentPhotos]:
    """Read the form, and close its files when all is done."""
    async with request.form() as form:
        role = form.get("role")
        files = [one for one in form.getlist("photos") if isinstance(one, UploadFile) and one.size]
        yield SentPhotos(
            str(form.get("number", "")),
            PhotoRole(role) if role in set(PhotoRole) else PhotoRole.FRONT,
            tuple(files),
        )


@router.post("/add/photos", include_in_schema=False, dependencies=[needs(Role.PACK)])
def add(
    request: Request, acting: ThePageActing, sent: Annotated[SentPhotos, Depends(_sent)]
) -> Response:
    """Keep the photos that can be used, and tell of the others."""
    fault = _find_fault(sent)
    if fault:
        form = FilledForm({"role": sent.role.value}, {"photos": fault})
        return show_object(request, acting.counter, sent.number, form)
    new, findings = _keep(acting, sent)
    unusable = [one for one in findings if one.code == "photo-unusable"]
    if unusable and len(unusable) == len(sent.files):
        form = FilledForm({"role": sent.role.value}, {"photos": _tell(unusable)})
        return show_object(request, acting.counter, sent.number, form)
    words = say_many("{num} photo added.", "{num} photos added.", new)
    return go_to(page_of_object(sent.number), Notice(f"{words} {_tell(findings)}".strip()))


def _find_fault(sent: SentPhotos) -> str:
    if not sent.files:
        return say("Choose a photo.")
    if any((one.size or 0) > FILE_LIMIT_BYTES for one in sent.files):
        return say("A photo may have 25 MB at most.")
    return ""


def _keep(acting: Acting, sent: SentPhotos) -> tuple[int, tuple[Finding, ...]]:
    with acting.counter.working() as desk, tempfile.TemporaryDirectory() as folder:
        files: dict[str, Path] = {}
        for at, photo in enumerate(sent.files, start=1):
            # Cameras call many photos alike; only the ending counts.
            path = Path(folder) / str(at)
            with path.open("wb") as target:
                photo.file.seek(0)
                shutil.copyfileobj(photo.file, target)
            files[f"{at}{Path(photo.filename or '').suffix}"] = path
        return add_photos(desk, sent.number, files, sent.role, stamp=acting.stamp)


def _tell(findings: Sequence[Finding]) -> str:
    return " ".join(dict.fromkeys(tell_finding(one) for one in findings))
