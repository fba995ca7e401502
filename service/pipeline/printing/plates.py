"""Cards to plates: found in the cache, or made and proved in child processes, a chunk at a time.

Cards come in and go out one after another, so that no more than a few chunks of pages are held at
once. One bad card never stops a run.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable, Iterator, Sequence

from service.errors import JobError, ServiceError
from service.geometry import Size
from service.pages.page import Page
from service.pipeline.options import FittedCard, MadeCard
from service.pipeline.printing.photos import Photos
from service.pipeline.printing.shelf import Shelf
from service.pipeline.ready import Workshop
from service.render.frames.frame import Frame
from service.render.frames.looks import looks_in
from service.render.inking import Chunk, PlateTask, choose_pictures, ink_and_prove
from service.render.plates.key import plate_key
from service.render.plates.pack import unpack_plate
from service.sheets.impose import Face

CHUNK = 32
"""Pages proved in one file: enough that opening it costs little, few enough to spread evenly."""
WINDOW = 64
"""Pages looked up in the cache at once."""
LIMIT_SECONDS = 60.0

Answer = tuple[bytes | ServiceError, ...]


def make_cards(
    cards: Iterable[FittedCard],
    photos: Photos,
    workshop: Workshop,
    shelf: Shelf,
) -> Iterator[tuple[MadeCard, ServiceError | None]]:
    """Give each card with all its plates on the shelf, or with what kept one from being made."""
    desk = _Desk(photos, workshop, shelf)
    sent: deque[Chunk] = deque()
    alone: list[PlateTask] = []
    for answer in workshop.workers.run(
        ink_and_prove, _noted(desk.chunks(cards), sent), limit_seconds=LIMIT_SECONDS
    ):
        chunk = sent.popleft()
        if isinstance(answer, ServiceError):
            alone.extend(chunk.tasks)
        else:
            desk.take(chunk, answer)
        yield from desk.finished()
    # A chunk that failed as a whole is made again plate by plate.
    singly = [desk.chunk([task]) for task in alone]
    answers = workshop.workers.run(ink_and_prove, singly, limit_seconds=LIMIT_SECONDS)
    for chunk, answer in zip(singly, answers, strict=True):
        desk.take(chunk, (answer,) if isinstance(answer, ServiceError) else answer)
    yield from desk.finished()


def _noted(chunks: Iterable[Chunk], sent: deque[Chunk]) -> Iterator[Chunk]:
    for chunk in chunks:
        sent.append(chunk)
        yield chunk


class _Desk:
    """Cards on their way: what is asked for, what is waiting, and what has failed."""

    def __init__(self, photos: Photos, workshop: Workshop, shelf: Shelf) -> None:
        self._photos = photos
        self._workshop = workshop
        self._shelf = shelf
        self._frames: dict[str, Frame] = {}
        self._refused: dict[str, ServiceError] = {}
        self._waiting: deque[MadeCard] = deque()
        self._errors: dict[str, ServiceError] = {}
        self._asked: set[str] = set()

    def chunks(self, cards: Iterable[FittedCard]) -> Iterator[Chunk]:
        """Give the plates that are still to be made, in chunks."""
        missing: list[PlateTask] = []
        for window in _windows(cards):
            missing += self._missing(window)
            while len(missing) >= CHUNK:
                yield self.chunk(missing[:CHUNK])
                del missing[:CHUNK]
        if missing:
            yield self.chunk(missing)

    def chunk(self, tasks: Sequence[PlateTask]) -> Chunk:
        """Give tasks with the drawings they may need."""
        return Chunk(tuple(tasks), self._workshop.frames.marks())

    def take(self, chunk: Chunk, answer: Answer) -> None:
        """Take what came of a chunk, and keep it for the next run."""
        made: dict[str, bytes] = {}
        for task, result in zip(chunk.tasks, answer, strict=True):
            plate = None if isinstance(result, ServiceError) else unpack_plate(result, key=task.key)
            if isinstance(result, ServiceError):
                self._errors[task.key] = result
            elif plate is None:
                self._errors[task.key] = JobError("The plate was damaged on its way.")
            else:
                self._shelf.add({task.key: plate})
                made[task.key] = result
        self._workshop.plates.keep_packed(made)

    def finished(self) -> Iterator[tuple[MadeCard, ServiceError | None]]:
        """Give the cards of which nothing is missing any more, in the order they came."""
        while self._waiting and all(map(self._is_settled, self._waiting[0].faces)):
            card = self._waiting.popleft()
            errors = (self._errors.get(face.key) for face in card.faces)
            yield card, next(filter(None, errors), None)

    def _is_settled(self, face: Face) -> bool:
        return self._shelf.holds(face.key) or face.key in self._errors

    def _missing(self, window: Sequence[FittedCard]) -> list[PlateTask]:
        """Take cards in hand; give the tasks for what neither shelf nor cache holds."""
        pages = [page for card in window for page in card.pages]
        self._photos.refine_for(pages)
        self._measure_frames(pages)
        tasks: dict[str, PlateTask] = {}
        for card in window:
            own = [self._task(page) for page in card.pages]
            tasks.update((task.key, task) for task in own)
            faces = tuple(Face(task.key, task.page.size) for task in own)
            self._waiting.append(MadeCard(card.kind, card.card, card.stock, faces))
        wanted = [key for key in tasks if key not in self._asked and key not in self._errors]
        self._asked.update(wanted)
        found = self._workshop.plates.find(wanted)
        self._shelf.add(found)
        return [tasks[key] for key in wanted if key not in found]

    def _measure_frames(self, pages: Sequence[Page]) -> None:
        """See to it that the frame of each kind has a mould for every look of these pages."""
        for (kind, size), alike in _by_kind(pages).items():
            looks = looks_in(alike, self._photos.thumbnails)
            try:
                self._frames[kind] = self._workshop.frames.find_or_make(kind, size, looks)
            except ServiceError as error:
                self._refused[kind] = error

    def _task(self, page: Page) -> PlateTask:
        pictures = choose_pictures(page, self._photos.thumbnails)
        # Without a frame there is no ink: the page keeps a name, under which the error stands.
        frame = self._frames.get(page.kind) or Frame(page.kind, "", {}, {})
        key = plate_key(page, frame.sha256, pictures)
        if page.kind in self._refused:
            self._errors[key] = self._refused[page.kind]
        return PlateTask(key, page, frame, pictures)


def _by_kind(pages: Iterable[Page]) -> dict[tuple[str, Size], list[Page]]:
    found: dict[tuple[str, Size], list[Page]] = {}
    for page in pages:
        found.setdefault((page.kind, page.size), []).append(page)
    return found


def _windows(cards: Iterable[FittedCard]) -> Iterator[list[FittedCard]]:
    window: list[FittedCard] = []
    pages = 0
    for card in cards:
        window.append(card)
        pages += len(card.pages)
        if pages >= WINDOW:
            yield window
            window, pages = [], 0
    if window:
        yield window
