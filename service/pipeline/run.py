"""The main job: records -> contents -> cards -> pages -> sheets -> PDF -> proof."""

from __future__ import annotations

import tempfile
from collections.abc import Mapping
from pathlib import Path

from service.findings import Finding, Where, make_finding
from service.pipeline.fitting import fit_cards
from service.pipeline.options import Outcome, PrintFile, PrintOptions
from service.pipeline.printing.file import make_file, write_file
from service.pipeline.printing.ink import ink_collection
from service.pipeline.printing.lay import LaidFile, lay_files
from service.pipeline.ready import Progress, Workshop, make_ready, tell_nobody
from service.records.record import Collection
from service.render.pictures.prepare import PhotoSource
from service.sentence import Sentence


def print_collection(
    collection: Collection,
    photos: Mapping[str, PhotoSource],
    options: PrintOptions,
    workshop: Workshop,
    *,
    on_progress: Progress = tell_nobody,
) -> Outcome:
    """Print the cards of a collection; every file has been proved.

    The files stand in a folder of their own below the workshop's scratch folder; whoever takes them
    removes it. A card that cannot be printed is a finding and the others go on.

    Raises:
        ContentsError: When there is nothing to print.
        SheetError: When the stock asked for cannot take the pages.
        ProofFailedError: When a finished sheet does not read back as it should.
    """
    inked = ink_collection(collection, photos, options, workshop, on_progress=on_progress)
    folder = Path(tempfile.mkdtemp(dir=workshop.scratch_folder))
    files: list[PrintFile] = []
    for laid in lay_files(inked.groups, inked.shelf, options, folder):
        files.append(make_file(laid, inked.shelf, (inked.quick, inked.mending)))
        on_progress("sheets", len(files), len(inked.groups))
    return Outcome(tuple(files), _noticed(inked.findings, files))


def plan_collection(
    collection: Collection,
    photos: Mapping[str, PhotoSource],
    options: PrintOptions,
    workshop: Workshop,
) -> tuple[tuple[LaidFile, ...], tuple[Finding, ...]]:
    """Write the files that printing would give, and say how they lie on their sheets.

    They are for the eye alone: their faces are proved, but nobody has read the files back. They
    stand in a folder of their own as after printing, and nothing else is kept.

    Raises:
        ContentsError: When there is nothing to print.
        SheetError: When the stock asked for cannot take the pages.
    """
    inked = ink_collection(collection, photos, options, workshop, on_progress=tell_nobody)
    folder = Path(tempfile.mkdtemp(dir=workshop.scratch_folder))
    planned = tuple(lay_files(inked.groups, inked.shelf, options, folder))
    for laid in planned:
        write_file(laid, inked.shelf, inked.mending)
    return planned, _noticed(inked.findings, [laid.file for laid in planned])


def check_collection(
    collection: Collection,
    photos: Mapping[str, PhotoSource],
    options: PrintOptions,
    workshop: Workshop,
) -> tuple[Finding, ...]:
    """Give everything noticed in records, packings, photos and the fit, without printing."""
    ready = make_ready(collection, photos, options, workshop)
    findings: list[Finding] = []
    for _card in fit_cards(ready, options, workshop.ruler, findings):
        pass
    return (*ready.findings, *dict.fromkeys(findings))


def _noticed(inked: tuple[Finding, ...], files: list[PrintFile]) -> tuple[Finding, ...]:
    empty = (_left_empty(file) for file in files if file.left_empty)
    return (*inked, *empty)


def _left_empty(file: PrintFile) -> Finding:
    positions = ", ".join(map(str, file.left_empty))
    message = Sentence(
        "The printer does not reach position {positions}: nothing was put there.",
        positions=positions,
    )
    return make_finding("position-left-empty", Where(file=file.name), message)
