"""The swap list to a finished file, through the same ink, sheets and proof as every card."""

from __future__ import annotations

import tempfile
from dataclasses import replace
from pathlib import Path

from service.cards.swap_list import SwapList
from service.errors import ContentsError, JobError, ServiceError
from service.pages.page import Page
from service.pages.swap_list.fit import KIND, fit_swap_list
from service.pipeline.printing.shelf import Shelf
from service.pipeline.ready import Workshop
from service.render.compose.sheets import Parts, write_sheets
from service.render.frames.looks import looks_in
from service.render.inking import Chunk, PlateTask, ink_and_prove
from service.render.plates.key import plate_key
from service.render.plates.pack import unpack_plate
from service.render.proof.finished.file import prove_file
from service.render.proof.finished.rasters import prove_rasters
from service.render.reading.fonts import shipped_fonts
from service.render.task import FONTS_CONF
from service.sheets.impose import Face, impose_pages
from service.sheets.stocks import STOCKS, find_stock

_STOCKS = {"A4": "A4 card", "Letter": "Letter card"}
_CHUNK = 16
_LIMIT_SECONDS = 60.0


def print_swap_list(swap_list: SwapList, workshop: Workshop, *, paper: str = "A4") -> Path:
    """Print the list; the file stands in a folder of its own below the scratch folder.

    Raises:
        ContentsError: When there is no card to replace.
        DoesNotFitError: When one row is higher than a page.
        ProofFailedError: When a page does not read back as it should.
    """
    if not swap_list.rows:
        message = "No card has to be replaced."
        raise ContentsError(message)
    stock = find_stock(_STOCKS[paper], STOCKS)
    shelf = Shelf()
    faces = _ink(fit_swap_list(swap_list, stock.label, workshop.ruler), workshop, shelf)
    sheets = impose_pages(faces, stock)
    nothing = dict[str, bytes]().__getitem__
    parts = Parts(nothing, nothing, tuple(shipped_fonts(FONTS_CONF.parent).items()))
    path = Path(tempfile.mkdtemp(dir=workshop.scratch_folder)) / f"{KIND}.pdf"
    with path.open("wb") as target:
        write_sheets(target, sheets, shelf, parts, title="Swap list")
    prove_file(path, sheets, shelf, parts)
    prove_rasters(path, sheets)
    return path


def _ink(pages: tuple[Page, ...], workshop: Workshop, shelf: Shelf) -> list[Face]:
    """Ink the pages and put their proved plates on the shelf.

    Raises:
        ServiceError: When one of them cannot be inked, or does not read back as it should.
        JobError: When a plate was damaged on its way.
    """
    frame = workshop.frames.find_or_make(KIND, pages[0].size, looks_in(pages, {}))
    tasks = [PlateTask(plate_key(page, frame.sha256, {}), page, frame, {}) for page in pages]
    portions = [tuple(tasks[first : first + _CHUNK]) for first in range(0, len(tasks), _CHUNK)]
    chunks = [Chunk(some, {}) for some in portions]
    answers = workshop.workers.run(ink_and_prove, chunks, limit_seconds=_LIMIT_SECONDS)
    for some, answer in zip(portions, answers, strict=True):
        if isinstance(answer, ServiceError):
            raise answer
        for task, packed in zip(some, answer, strict=True):
            if isinstance(packed, ServiceError):
                raise packed
            plate = unpack_plate(packed, key=task.key)
            if plate is None:
                message = "The plate was damaged on its way."
                raise JobError(message)
            shelf.add({task.key: plate})
    faces = (Face(task.key, task.page.size) for task in tasks)
    return [replace(face, ink=shelf.ink(face.key)) for face in faces]
