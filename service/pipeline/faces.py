"""Pages drawn and proved in child processes, a chunk at a time; one bad card never stops a run."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from service.errors import ServiceError
from service.geometry import Size
from service.pages.page import Page, PictureBlock
from service.render.context import Picture
from service.render.pictures.thumbnails import Thumbnails, choose_thumbnail
from service.render.proof.faces import FaceProof, prove_faces
from service.render.task import FONTS_CONF, DrawTask
from service.render.worker import Workers

CHUNK = 12
"""Pages a document: measured best between 10 and 20 for this engine."""
LIMIT_SECONDS = 120.0


@dataclass(frozen=True, slots=True)
class Face:
    """One page to draw: its place among all pages of the run, and the file it goes into."""

    index: int
    group: str
    page: Page


@dataclass(frozen=True, slots=True)
class DrawnChunk:
    """Faces drawn into one file, page i being `faces[i]`."""

    faces: tuple[Face, ...]
    pdf: bytes
    proof: FaceProof


def draw_faces(
    faces: Sequence[Face],
    photos: Mapping[str, Thumbnails],
    workers: Workers,
    *,
    on_progress: Callable[[int], None] | None = None,
) -> tuple[tuple[DrawnChunk, ...], dict[int, ServiceError]]:
    """Draw and prove all faces; a chunk that fails is drawn again page by page.

    Gives the chunks and, by the index of its page, what kept a page from being printed.
    """
    chunks = [chunk for group in _by_group(faces) for chunk in _cut(group)]
    drawn: list[DrawnChunk] = []
    alone: list[tuple[Face, ...]] = []
    done = 0
    answers = _run(chunks, photos, workers)
    for chunk, answer in zip(chunks, answers, strict=True):
        if isinstance(answer, ServiceError):
            alone.extend((face,) for face in chunk)
        else:
            drawn.append(DrawnChunk(chunk, *answer))
        done += len(chunk)
        if on_progress:
            on_progress(done)
    failed: dict[int, ServiceError] = {}
    for chunk, answer in zip(alone, _run(alone, photos, workers), strict=True):
        if isinstance(answer, ServiceError):
            failed[chunk[0].index] = answer
        else:
            drawn.append(DrawnChunk(chunk, *answer))
    return tuple(drawn), failed


def _by_group(faces: Sequence[Face]) -> list[list[Face]]:
    groups: dict[str, list[Face]] = {}
    for face in faces:
        groups.setdefault(face.group, []).append(face)
    return list(groups.values())


def _cut(faces: Sequence[Face]) -> list[tuple[Face, ...]]:
    return [tuple(faces[start : start + CHUNK]) for start in range(0, len(faces), CHUNK)]


def _run(
    chunks: Sequence[Sequence[Face]], photos: Mapping[str, Thumbnails], workers: Workers
) -> Iterator[tuple[bytes, FaceProof] | ServiceError]:
    tasks = (make_task([face.page for face in chunk], photos) for chunk in chunks)
    return workers.run(draw_and_prove, tasks, limit_seconds=LIMIT_SECONDS)


def make_task(pages: Sequence[Page], photos: Mapping[str, Thumbnails]) -> DrawTask:
    """Give pages the smallest size of each photo that prints sharply where it is largest."""
    pictures: dict[str, Picture] = {}
    for name, size in _largest_frames(pages).items():
        if name in photos:
            chosen = choose_thumbnail(
                photos[name], width_mm=size.width_mm, height_mm=size.height_mm
            )
            pictures[name] = Picture(chosen.jpeg, chosen.sha256, chosen.width_px, chosen.height_px)
    return DrawTask(tuple(pages), pictures)


def _largest_frames(pages: Sequence[Page]) -> dict[str, Size]:
    frames: dict[str, Size] = {}
    for page in pages:
        for block in page.blocks:
            if isinstance(block, PictureBlock) and block.photo:
                known = frames.get(block.photo, Size(0, 0))
                frames[block.photo] = Size(
                    max(known.width_mm, block.rect.width_mm),
                    max(known.height_mm, block.rect.height_mm),
                )
    return frames


def draw_and_prove(task: DrawTask) -> tuple[bytes, FaceProof]:
    """Draw one chunk and read it back; runs in a child process."""
    # The engine looks at its fonts when it is imported, which only the child's environment names.
    from service.render.draw import draw_pages  # noqa: PLC0415

    pdf = draw_pages(task)
    return pdf, prove_faces(pdf, task.pages, fonts_folder=FONTS_CONF.parent)
