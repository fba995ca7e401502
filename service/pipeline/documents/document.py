"""Pages that are no card to a finished file, through the same ink, sheets and proof as cards."""

from __future__ import annotations

import tempfile
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from service.errors import JobError, ServiceError
from service.pages.page import Page
from service.pipeline.printing.photos import Photos
from service.pipeline.printing.shelf import Shelf
from service.pipeline.ready import Workshop
from service.render.compose.sheets import Parts, write_sheets
from service.render.frames.looks import looks_in
from service.render.inking import Chunk, PlateTask, choose_pictures, ink_and_prove
from service.render.plates.key import plate_key
from service.render.plates.pack import unpack_plate
from service.render.proof.finished.file import prove_file
from service.render.proof.finished.rasters import prove_rasters
from service.render.reading.fonts import shipped_fonts
from service.render.task import FONTS_CONF
from service.sentence import Sentence
from service.sheets.impose import Face, impose_pages
from service.sheets.printers.printer import ANY_PRINTER, PrinterSetup
from service.sheets.stock import Stock

WHOLE_PAGE = {"A4": "A4 card", "Letter": "Letter card"}
"""The stock that is one page of a paper."""

_CHUNK = 16
_LIMIT_SECONDS = 60.0


@dataclass(frozen=True, slots=True)
class Paper:
    """What a document goes on: a stock, where on its first sheet to begin, and the printer."""

    stock: Stock
    start_position: int = 1
    skipped: frozenset[int] = frozenset()
    printer: PrinterSetup = ANY_PRINTER


def print_document(
    pages: Sequence[Page], paper: Paper, photos: Photos, workshop: Workshop, *, title: str
) -> Path:
    """Print pages of one kind; the file is named after it and has a folder of its own.

    The folder stands below the workshop's scratch folder; whoever takes the file removes it.

    Raises:
        SheetError: When the stock cannot take the pages.
        ProofFailedError: When a page does not read back as it should.
    """
    shelf = Shelf()
    photos.refine_for(pages)
    faces = _ink(pages, photos, workshop, shelf)
    sheets = impose_pages(
        faces,
        paper.stock,
        start_position=paper.start_position,
        skipped=paper.skipped,
        printer=paper.printer,
    )
    fonts = tuple(shipped_fonts(FONTS_CONF.parent).items())
    parts = Parts(photos.restored_pictures(), workshop.frames.marks().__getitem__, fonts)
    path = Path(tempfile.mkdtemp(dir=workshop.scratch_folder)) / f"{pages[0].kind}.pdf"
    with path.open("wb") as target:
        write_sheets(target, sheets, shelf, parts, title=title)
    prove_file(path, sheets, shelf, parts)
    prove_rasters(path, sheets)
    return path


def no_photos(workshop: Workshop) -> Photos:
    """Stand in where a document shows none."""
    return Photos({}, {}, workshop)


def _ink(pages: Sequence[Page], photos: Photos, workshop: Workshop, shelf: Shelf) -> list[Face]:
    """Ink the pages and put their proved plates on the shelf.

    Raises:
        ServiceError: When one of them cannot be inked, or does not read back as it should.
        JobError: When a plate was damaged on its way.
    """
    looks = looks_in(pages, photos.thumbnails)
    frame = workshop.frames.find_or_make(pages[0].kind, pages[0].size, looks)
    tasks = []
    for page in pages:
        pictures = choose_pictures(page, photos.thumbnails)
        tasks.append(PlateTask(plate_key(page, frame.sha256, pictures), page, frame, pictures))
    portions = [tuple(tasks[first : first + _CHUNK]) for first in range(0, len(tasks), _CHUNK)]
    chunks = [Chunk(some, workshop.frames.marks()) for some in portions]
    answers = workshop.workers.run(ink_and_prove, chunks, limit_seconds=_LIMIT_SECONDS)
    for some, answer in zip(portions, answers, strict=True):
        if isinstance(answer, ServiceError):
            raise answer
        for task, packed in zip(some, answer, strict=True):
            _put(shelf, task.key, packed)
    faces = (Face(task.key, task.page.size) for task in tasks)
    return [replace(face, ink=shelf.ink(face.key)) for face in faces]


def _put(shelf: Shelf, key: str, packed: bytes | ServiceError) -> None:
    """Put one plate on the shelf.

    Raises:
        ServiceError: When it could not be made.
        JobError: When it was damaged on its way.
    """
    if isinstance(packed, ServiceError):
        raise packed
    plate = unpack_plate(packed, key=key)
    if plate is None:
        message = Sentence("The plate was damaged on its way.")
        raise JobError(message)
    shelf.add({key: plate})
