"""Specimens as plates: what a frame makes of the pages it was measured from."""

from __future__ import annotations

import io
from collections.abc import Mapping, Sequence
from functools import cache
from pathlib import Path

from service.pages.page import Page
from service.render.compose.sheets import Parts, write_faces
from service.render.frames.frame import Frame
from service.render.frames.measure.specimen import specimen_pictures
from service.render.plates.make import make_plate
from service.render.plates.plate import PictureUse
from service.render.reading.fonts import shipped_fonts
from service.render.task import FONTS_CONF
from service.render.typeset.setter import Typesetter


def plated_pages(pages: Sequence[Page], frame: Frame, marks: Mapping[str, bytes]) -> bytes:
    """Give a PDF of specimen pages, filled from a frame; `marks` are the forms they name."""
    photos = specimen_pictures()
    uses = {
        name: PictureUse(photo.sha256, photo.width_px, photo.height_px)
        for name, photo in photos.items()
    }
    jpegs = {photo.sha256: photo.jpeg for photo in photos.values()}
    fonts = tuple(shipped_fonts(FONTS_CONF.parent).items())
    plates = [make_plate(page, frame, uses, _setter(FONTS_CONF)) for page in pages]
    target = io.BytesIO()
    write_faces(target, plates, Parts(jpegs.__getitem__, marks.__getitem__, fonts))
    return target.getvalue()


@cache
def _setter(fonts_conf: Path) -> Typesetter:
    """Keep one typesetter for the life of the process: it loads all fonts."""
    return Typesetter(fonts_conf)
