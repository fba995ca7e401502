"""The service's own way from records to a file, in one process."""

from __future__ import annotations

import json
from collections.abc import Sequence
from functools import cache, cached_property
from pathlib import Path

from service.geometry import Rect
from service.pages.page import Page
from service.pipeline.printing.plates import CHUNK
from service.pipeline.printing.shelf import Shelf
from service.render.compose.sheets import Parts, write_sheets
from service.render.frames.looks import looks_in
from service.render.frames.store import FrameStore
from service.render.inking import Chunk, PlateTask, ink_and_prove
from service.render.pictures.source import picture_source
from service.render.pictures.thumbnails import Thumbnail, Thumbnails
from service.render.plates.cache import PlateCache
from service.render.plates.key import plate_key
from service.render.plates.make import make_plate
from service.render.plates.pack import unpack_plate
from service.render.plates.plate import PictureUse, PlateProof, ProvedPlate
from service.render.proof.finished.file import prove_file
from service.render.reading.fonts import shipped_fonts
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from service.render.typeset.setter import Typesetter
from service.sheets.impose import Face, Sheet, impose_pages
from tests.benchmarks.content.photos import THUMBNAIL_PX
from tests.benchmarks.content.records import Record
from tests.benchmarks.content.store import Store
from tests.benchmarks.engine import Job
from tests.benchmarks.ours.pages import PageMaker, photo_name
from tests.benchmarks.ours.stocks import CARD_STOCK, LABEL_STOCK

_MOST_PLATE_BYTES = 1 << 30
_NOT_PROVED = PlateProof(0, 0, 0, 0, Rect(0, 0, 0, 0))


class Press:
    """Inks records and writes files; fonts are opened when the first text is set."""

    def __init__(self, job: Job) -> None:
        """Open frames, the plates kept, and the list of pictures."""
        self._job = job
        folder = job.store.folder / "ours"
        self._listed = folder / f"{job.kind}-keys.json"
        self._stock = CARD_STOCK if job.is_cards else LABEL_STOCK
        self._frames = FrameStore(folder / "frames")
        self._plates = PlateCache(folder / "plates.db", most_bytes=_MOST_PLATE_BYTES)
        thumbnails = ready_pictures(job.store)
        self._pictures = {name: _use(kept) for name, kept in thumbnails.items()}
        fonts = tuple(shipped_fonts(FONTS_CONF.parent).items())
        source = picture_source(thumbnails.values())
        self._parts = Parts(source, self._frames.marks().__getitem__, fonts)

    @cached_property
    def _setter(self) -> Typesetter:
        return Typesetter(FONTS_CONF)

    @cached_property
    def _pages(self) -> PageMaker:
        return PageMaker(PangoRuler(FONTS_CONF, self._setter), self._job.symbols)

    def page_of(self, record: Record) -> Page:
        """Set the texts of a record at their places."""
        return self._pages.page_of(record)

    def ink(self, records: Sequence[Record], shelf: Shelf, *, is_proved: bool) -> list[str]:
        """Put the plates of records on the shelf; gives their keys."""
        keys: list[str] = []
        for start in range(0, len(records), CHUNK):
            tasks = [self._task(record) for record in records[start : start + CHUNK]]
            keys += (task.key for task in tasks)
            if is_proved:
                self._ink_and_prove(tasks, shelf)
            else:
                shelf.add({task.key: self._ink(task) for task in tasks})
        return keys

    def keep(self, keys: Sequence[str], shelf: Shelf) -> None:
        """Keep plates for later runs, and their list."""
        self._plates.keep(shelf.proved(keys))
        self._listed.write_text(json.dumps(keys), "ascii")

    def kept_keys(self) -> list[str]:
        """Give the list of plates as the record of a print run has it."""
        return list(json.loads(self._listed.read_text("ascii")))

    def kept_plates(self, keys: Sequence[str]) -> Shelf:
        """Give the plates of an earlier run."""
        shelf = Shelf()
        shelf.add(self._plates.find(keys))
        return shelf

    def write(self, keys: Sequence[str], shelf: Shelf, out: Path) -> None:
        """Write the file."""
        with out.open("wb") as target:
            write_sheets(
                target,
                self._sheets(keys),
                shelf,
                self._parts,
                title="Benchmark",
                tagged=self._job.is_tagged,
            )

    def prove(self, keys: Sequence[str], shelf: Shelf, out: Path) -> None:
        """Read the finished file back."""
        prove_file(out, self._sheets(keys), shelf, self._parts)

    def close(self) -> None:
        """End what measures frames."""
        self._frames.close()

    def _task(self, record: Record) -> PlateTask:
        page = self.page_of(record)
        frame = self._frames.find_or_make(page.kind, page.size, looks_in([page], self._pictures))
        key = plate_key(page, frame.sha256, self._pictures)
        return PlateTask(key, page, frame, self._pictures)

    def _ink(self, task: PlateTask) -> ProvedPlate:
        plate = make_plate(task.page, task.frame, task.pictures, self._setter)
        return ProvedPlate(plate, _NOT_PROVED)

    def _ink_and_prove(self, tasks: Sequence[PlateTask], shelf: Shelf) -> None:
        made = ink_and_prove(Chunk(tuple(tasks), self._frames.marks()))
        for task, packed in zip(tasks, made, strict=True):
            if not isinstance(packed, bytes):
                raise packed
            proved = unpack_plate(packed, key=task.key)
            assert proved is not None
            shelf.add({task.key: proved})

    def _sheets(self, keys: Sequence[str]) -> Sequence[Sheet]:
        return impose_pages([Face(key, self._stock.label) for key in keys], self._stock)


@cache
def ready_pictures(store: Store) -> dict[str, Thumbnails]:
    """Give the thumbnails as they are found when the photos of a run have been prepared."""
    ready = {}
    for number, sha256 in enumerate(store.pictures()):
        path = store.thumbnail(number)
        size = Thumbnail(THUMBNAIL_PX, THUMBNAIL_PX, sha256, path.stat().st_size, path)
        ready[photo_name(number)] = Thumbnails((size,))
    return ready


def _use(thumbnails: Thumbnails) -> PictureUse:
    return PictureUse(thumbnails.largest.sha256, THUMBNAIL_PX, THUMBNAIL_PX)
