"""Preparing the photos of a run: thumbnails for all that can be used, findings for the others."""

from __future__ import annotations

import contextlib
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from service.errors import JobCrashedError, JobTimedOutError, PictureError, ServiceError
from service.findings import Finding, Where, make_finding
from service.records.photos.edit import AS_IT_CAME, PhotoEdit
from service.render.pictures.cache import ThumbnailCache, digest_of
from service.render.pictures.digests import DigestIndex
from service.render.pictures.photos import MAX_BYTES
from service.render.pictures.shown.edited import EditedPhoto, digest_of_edited
from service.render.pictures.source import PictureSource
from service.render.pictures.thumbnails import Grade, Thumbnails, make_thumbnails
from service.render.worker import Workers
from service.sentence import Sentence
from service.units import mm_from_dots

PhotoSource = bytes | Path | EditedPhoto
"""The bytes of a photo, or the file that holds them, perhaps edited; a file is only ever read."""

_Outcome = Thumbnails | Finding | None

# No photo within the limits takes a second; a file made to hang a decoder would take for ever.
LIMIT_SECONDS = 30.0
# Below this printed length at 300 dpi a photo is told to be small: 25 mm is a good short side.
_GOOD_SIDE_MM = 25.0
_PRINT_DPI = 300.0


@dataclass(frozen=True, slots=True)
class _Job:
    name: str
    source: PhotoSource
    cache_folder: Path
    grade: Grade


def prepare_photos(
    photos: Mapping[str, PhotoSource],
    *,
    cache_folder: Path,
    workers: Workers,
    grade: Grade = Grade.SMALL,
    on_progress: Callable[[int], None] | None = None,
) -> tuple[dict[str, Thumbnails], tuple[Finding, ...]]:
    """Give the thumbnails of every photo that can be used, by name, and what was noticed.

    Finished thumbnails come from the cache; the rest is decoded in `workers`. A photo that is
    missing, damaged or hostile costs a finding and never the run. `on_progress` is told how many
    photos have been decoded.
    """
    outcomes = _look_up_all(photos, cache_folder, grade)
    jobs = [
        _Job(name, photos[name], cache_folder, grade)
        for name, outcome in outcomes.items()
        if outcome is None
    ]
    answers = workers.run(_decode, jobs, limit_seconds=LIMIT_SECONDS, on_progress=on_progress)
    for job, answer in zip(jobs, answers, strict=True):
        outcomes[job.name] = (
            answer if isinstance(answer, Thumbnails) else _unusable(job.name, plain_reason(answer))
        )
    ready = {name: kept for name, kept in outcomes.items() if isinstance(kept, Thumbnails)}
    return ready, tuple(_findings(outcomes.items()))


def restorer(
    ready: Sequence[tuple[str, Thumbnails]],
    photos: Mapping[str, PhotoSource],
    *,
    cache_folder: Path,
    workers: Workers,
) -> PictureSource:
    """Give a function that makes a thumbnail again whose stored bytes turn out to be damaged.

    `ready` are the thumbnails in use with the names of their photos; a photo may have two grades.
    The function mends the cache too. It raises a `ServiceError` when the photo can no longer be
    used, and `PictureError` when it is no longer the photo from which `ready` was made.
    """

    def restore(sha256: str) -> bytes:
        name, used = next((name, photo) for name, photo in ready if photo.find(sha256))
        job = _Job(name, photos[name], cache_folder, used.grade)
        for answer in workers.run(_decode, [job], limit_seconds=LIMIT_SECONDS):
            if isinstance(answer, ServiceError):
                raise answer
            if made := answer.find(sha256):
                return made.jpeg
        raise PictureError(name, reason="the photo was changed during the run")

    return restore


def _look_up_all(
    photos: Mapping[str, PhotoSource], cache_folder: Path, grade: Grade
) -> dict[str, _Outcome]:
    cache, index = ThumbnailCache(cache_folder), DigestIndex(cache_folder / "digests")
    index.load()

    def find(source: PhotoSource) -> Thumbnails | None:
        plain, edit = _taken_apart(source)
        if isinstance(plain, bytes):
            digest = digest_of(plain)
        else:
            digest = index.digest_of(plain, most_bytes=MAX_BYTES + 1)
        return cache.find(digest_of_edited(digest, edit), grade)

    outcomes = {name: _look_up(name, source, find) for name, source in photos.items()}
    # A full disk costs the next run some time, but this run no photo.
    with contextlib.suppress(OSError):
        index.keep()
    return outcomes


def _look_up(
    name: str, source: PhotoSource, find: Callable[[PhotoSource], Thumbnails | None]
) -> _Outcome:
    """Give what the cache holds, or what is wrong with the file; None where it is to be decoded."""
    try:
        return find(source)
    except FileNotFoundError:
        return make_finding(
            "photo-missing", Where(file=name), Sentence("There is no photo {name}.", name=name)
        )
    except OSError as error:
        return _unusable(name, f"the file cannot be opened ({error.strerror})")


def _taken_apart(source: PhotoSource) -> tuple[bytes | Path, PhotoEdit]:
    return (source.source, source.edit) if isinstance(source, EditedPhoto) else (source, AS_IT_CAME)


def _read(source: bytes | Path) -> bytes:
    """Read a photo, but not much more than the largest that is taken."""
    if isinstance(source, bytes):
        return source
    with source.open("rb") as file:
        return file.read(MAX_BYTES + 1)


def _decode(job: _Job) -> Thumbnails:
    """Make and keep the thumbnails of one photo; runs in a child process."""
    plain, edit = _taken_apart(job.source)
    data = _read(plain)
    thumbnails = make_thumbnails(data, name=job.name, grade=job.grade, edit=edit)
    # A full disk costs the next run some time, but this run no photo.
    with contextlib.suppress(OSError):
        return ThumbnailCache(job.cache_folder).keep(
            digest_of_edited(digest_of(data), edit), thumbnails
        )
    return thumbnails


def plain_reason(error: ServiceError) -> str:
    """Say why a photo could not be used, in words for the person who took it."""
    if isinstance(error, PictureError):
        return error.reason
    if isinstance(error, JobTimedOutError):
        return f"it could not be opened within {error.seconds:.0f} seconds"
    if isinstance(error, JobCrashedError):
        return "opening it made the program that opens photos fail"
    return "it could not be opened"


def _unusable(name: str, reason: str) -> Finding:
    return make_finding(
        "photo-unusable", Where(file=name), Sentence("{name}: {reason}.", name=name, reason=reason)
    )


def _findings(outcomes: Iterable[tuple[str, _Outcome]]) -> Iterator[Finding]:
    for name, outcome in outcomes:
        if isinstance(outcome, Finding):
            yield outcome
        elif outcome is not None:
            yield from _too_small(name, outcome)


def _too_small(name: str, thumbnails: Thumbnails) -> Iterator[Finding]:
    width_px, height_px = thumbnails.largest.width_px, thumbnails.largest.height_px
    sharp_mm = mm_from_dots(max(width_px, height_px), resolution_dpi=_PRINT_DPI)
    if sharp_mm < _GOOD_SIDE_MM:
        message = Sentence(
            "{name}: the object is {width_px} x {height_px} pixels in the photo,"
            " which is sharp up to {sharp_mm:.0f} mm in print.",
            name=name,
            width_px=width_px,
            height_px=height_px,
            sharp_mm=sharp_mm,
        )
        yield make_finding("photo-too-small", Where(file=name), message)
