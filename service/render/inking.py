"""Plates made and proved, several at a time; runs in a child process."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from service.errors import ServiceError, TemplateError
from service.pages.page import Page, PictureBlock
from service.render.frames.frame import Frame
from service.render.pictures.thumbnails import Thumbnails, choose_thumbnail
from service.render.plates.make import make_plate
from service.render.plates.pack import pack_plate
from service.render.plates.plate import PictureUse, Plate, PlateProof, ProvedPlate
from service.render.proof.faces import prove_plates
from service.render.task import FONTS_CONF
from service.render.typeset.setter import Typesetter


@dataclass(frozen=True, slots=True)
class PlateTask:
    """A page to be inked: its frame, and the pictures it may show, by the photo's name."""

    key: str
    page: Page
    frame: Frame
    pictures: Mapping[str, PictureUse]


@dataclass(frozen=True, slots=True)
class Chunk:
    """Plates proved in one file, and the drawings of the marks, by their codes."""

    tasks: tuple[PlateTask, ...]
    marks: Mapping[str, bytes]


def choose_pictures(page: Page, photos: Mapping[str, Thumbnails]) -> dict[str, PictureUse]:
    """Give the smallest size of each photo that prints sharply where it is largest on a page."""
    chosen: dict[str, PictureUse] = {}
    for block in page.blocks:
        if isinstance(block, PictureBlock) and block.photo in photos:
            found = choose_thumbnail(photos[block.photo], block.rect.width_mm, block.rect.height_mm)
            known = chosen.get(block.photo)
            if known is None or found.width_px > known.width_px:
                use = PictureUse(found.sha256, found.width_px, found.height_px)
                chosen[block.photo] = use
    return chosen


def ink_and_prove(chunk: Chunk) -> tuple[bytes | ServiceError, ...]:
    """Make plates and read them back; gives each packed, or what is wrong with it."""
    inked = [_ink(task) for task in chunk.tasks]
    sound = [
        (plate, task.page)
        for plate, task in zip(inked, chunk.tasks, strict=True)
        if isinstance(plate, Plate)
    ]
    plates, pages = [plate for plate, _ in sound], [page for _, page in sound]
    proofs = iter(prove_plates(plates, pages, chunk.marks, fonts_folder=FONTS_CONF.parent))
    return tuple(
        _packed(task.key, plate, next(proofs)) if isinstance(plate, Plate) else plate
        for task, plate in zip(chunk.tasks, inked, strict=True)
    )


def _ink(task: PlateTask) -> Plate | ServiceError:
    try:
        return make_plate(task.page, task.frame, task.pictures, _setter(FONTS_CONF))
    except KeyError as error:
        reason = f"the frame knows no {error}"
        return TemplateError(f"{task.page.kind}/card.html", reason=reason)


def _packed(key: str, plate: Plate, proof: PlateProof | ServiceError) -> bytes | ServiceError:
    if isinstance(proof, ServiceError):
        return proof
    return pack_plate(ProvedPlate(plate, proof), key=key)


@cache
def _setter(fonts_conf: Path) -> Typesetter:
    """Keep one typesetter for the life of the process, with what it remembers."""
    return Typesetter(fonts_conf)
