"""What is asked of the press, and how it is done; this part runs in a child process."""

from __future__ import annotations

import shutil
import time
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from pathlib import Path

from service.cards.kinds import find_kind
from service.errors import ContentsError, ServiceError
from service.findings import Finding
from service.pipeline.options import PrintOptions
from service.pipeline.read import read_source
from service.pipeline.ready import Workshop
from service.pipeline.run import check_collection, print_collection
from service.records.record import Collection
from service.render.raster import render_page_png
from service.sheets.stocks import STOCKS, find_stock


@dataclass(frozen=True, slots=True)
class Choice:
    """What to print and on what, in plain words; empty means everything, or chosen by measure."""

    kinds: tuple[str, ...] = ()
    stock: str = ""
    paper: str = "A4"
    start_position: int = 1
    skipped: frozenset[int] = frozenset()
    copies: int = 1
    containers: frozenset[str] = frozenset()

    def to_options(self) -> PrintOptions:
        """Look kinds and stock up.

        Raises:
            UnknownCardKindError: When there is no such kind.
            UnknownStockError: When there is no such stock.
            StartPositionError: When the stock has no such position.
        """
        stock = find_stock(self.stock, STOCKS) if self.stock else None
        if stock is not None:
            stock.position_rect(self.start_position)
        return PrintOptions(
            kinds=tuple(find_kind(code) for code in self.kinds),
            stock=stock,
            paper=self.paper,
            start_position=self.start_position,
            skipped=self.skipped,
            copies=self.copies,
            containers=self.containers,
        )


@dataclass(frozen=True, slots=True)
class Picture:
    """One page of a finished file as a picture; pages are counted from 1."""

    page: int
    resolution_dpi: float


@dataclass(frozen=True, slots=True)
class Job:
    """One request: a JSON document, photos by the name the records give, and what to make.

    Without a choice the records are only checked.
    """

    records: bytes
    photos: Mapping[str, Path]
    choice: Choice | None = None
    picture: Picture | None = None


@dataclass(frozen=True, slots=True)
class DoneFile:
    """A finished, proven PDF: all cards of one kind on one stock."""

    name: str
    kind: str
    stock: str
    cards: int
    sheets: int
    pdf: bytes


@dataclass(frozen=True, slots=True)
class Done:
    """What came of a job; `picture` is a PNG where one was asked for and exactly one file came."""

    files: tuple[DoneFile, ...] = ()
    findings: tuple[Finding, ...] = ()
    picture: bytes = b""


@dataclass(frozen=True, slots=True)
class Failed:
    """A job that left nothing to hand over, with everything noticed up to then."""

    error: ServiceError
    findings: tuple[Finding, ...] = ()


class _Photos(Mapping[str, Path]):
    """The photos of one request; any other name leads nowhere.

    A name in somebody's records must never open a file of this machine, so a photo that was not
    sent has a path at which there is none.
    """

    def __init__(self, sent: Mapping[str, Path]) -> None:
        self._sent = sent

    def __getitem__(self, name: str) -> Path:
        return self._sent.get(name, Path("/nonexistent/photo"))

    def __iter__(self) -> Iterator[str]:
        return iter(self._sent)

    def __len__(self) -> int:
        return len(self._sent)


def do_job(job: Job, workshop: Workshop) -> Done | Failed:
    """Read, check and print; an error of ours is an answer as well."""
    photos = _Photos(job.photos)
    usual = PrintOptions(today=datetime.fromtimestamp(time.time(), tz=UTC).astimezone().date())
    try:
        collection = read_source({"records.json": job.records}, workshop.workers)
    except ServiceError as error:
        return Failed(error)
    try:
        if job.choice is None:
            return Done(findings=check_collection(collection, photos, usual, workshop))
        options = replace(job.choice.to_options(), today=usual.today)
        return _print(job, options, collection, workshop)
    except ServiceError as error:
        return Failed(error, _notice(collection, photos, usual, workshop))


def _print(
    job: Job, options: PrintOptions, collection: Collection, workshop: Workshop
) -> Done | Failed:
    outcome = print_collection(collection, _Photos(job.photos), options, workshop)
    if not outcome.files:
        return Failed(ContentsError("None of the cards could be drawn."), outcome.findings)
    files = tuple(
        DoneFile(file.name, file.kind.code, file.stock.name, file.cards, file.sheets, file.pdf)
        for file in outcome.files
    )
    shutil.rmtree(outcome.files[0].path.parent)
    return Done(files, outcome.findings, _draw(job.picture, files))


def _draw(picture: Picture | None, files: tuple[DoneFile, ...]) -> bytes:
    if picture is None or len(files) != 1 or picture.page > files[0].sheets:
        return b""
    return render_page_png(files[0].pdf, picture.page, resolution_dpi=picture.resolution_dpi)


def _notice(
    collection: Collection, photos: Mapping[str, Path], options: PrintOptions, workshop: Workshop
) -> tuple[Finding, ...]:
    """Say what was noticed before the work failed, as far as that can still be found out."""
    try:
        return check_collection(collection, photos, options, workshop)
    except ServiceError:
        return collection.findings
