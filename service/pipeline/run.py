"""The main job: records -> contents -> cards -> pages -> sheets -> PDF -> proof."""

from __future__ import annotations

import tempfile
from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from service.contents.packing import Packing
from service.errors import ContentsError
from service.findings import Finding, Where, make_finding
from service.pipeline.fitting import failed_card, fit_cards
from service.pipeline.options import MadeCard, Outcome, PrintFile, PrintOptions, where_is
from service.pipeline.printing.file import make_file
from service.pipeline.printing.photos import Photos
from service.pipeline.printing.plates import make_cards
from service.pipeline.printing.shelf import Shelf
from service.pipeline.ready import Progress, Workshop, make_ready, tell_nobody
from service.records.record import Collection
from service.render.compose.sheets import Parts
from service.render.pictures.prepare import PhotoSource
from service.render.reading.fonts import shipped_fonts
from service.render.task import FONTS_CONF
from service.sheets.printers.used_sheet import UsedSheet, next_start, remember
from service.sheets.stock import Stock


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
    ready = make_ready(collection, photos, options, workshop, on_progress=on_progress)
    findings: list[Finding] = []
    fitted = fit_cards(ready, options, workshop.ruler, findings, on_progress=on_progress)
    shelf, shown = Shelf(), Photos(ready.thumbnails, photos, workshop)
    groups: dict[str, list[MadeCard]] = {}
    fitted_any = False
    for card, error in make_cards(fitted, shown, workshop, shelf):
        fitted_any = True
        if error is None:
            groups.setdefault(f"{card.kind.code}\n{card.stock.name}", []).append(card)
        else:
            findings.append(failed_card(where_is(card.card), error, card.kind.name))
    if not fitted_any:
        raise ContentsError(_nothing_words(ready.packings, findings))
    folder = Path(tempfile.mkdtemp(dir=workshop.scratch_folder))
    plain = Parts(
        shown.pictures(),
        workshop.frames.marks().__getitem__,
        tuple(shipped_fonts(FONTS_CONF.parent).items()),
    )
    attempts = (plain, replace(plain, pictures=shown.restored_pictures()))
    files: list[PrintFile] = []
    begun = options.begun
    for number, cards in enumerate(groups.values(), start=1):
        started = _started(options, begun, cards[0].stock)
        files.append(make_file(cards, shelf, attempts, started, folder))
        if options.begun:
            begun = remember(begun, files[-1].stock.name, files[-1].left_over)
        on_progress("sheets", number, len(groups))
    findings.extend(_left_empty(file) for file in files if file.left_empty)
    return Outcome(tuple(files), (*ready.findings, *dict.fromkeys(findings)))


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


def _started(options: PrintOptions, begun: Sequence[UsedSheet], stock: Stock) -> PrintOptions:
    """Start where a sheet of this stock was begun, by an earlier run or an earlier file of this."""
    if not any(sheet.stock == stock.name for sheet in begun):
        return options
    start = next_start(begun, stock)
    return replace(options, start_position=start.position, skipped=start.skipped)


def _left_empty(file: PrintFile) -> Finding:
    positions = ", ".join(map(str, file.left_empty))
    message = f"The printer does not reach position {positions}: nothing was put there."
    return make_finding("position-left-empty", Where(file=file.name), message)


def _nothing_words(packings: Sequence[Packing], findings: Sequence[Finding]) -> str:
    if findings:
        return f"No card could be laid out. {findings[0].message}"
    if not packings:
        return "There is no container to print."
    return "None of the containers gets a card of the kinds asked for."
