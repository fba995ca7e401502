"""A collection to cards whose faces are inked and proved, ready to be put on sheets."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from service.contents.packing import Packing
from service.errors import ContentsError
from service.findings import Finding
from service.pipeline.fitting import failed_card, fit_cards
from service.pipeline.options import MadeCard, PrintOptions, where_is
from service.pipeline.printing.photos import Photos
from service.pipeline.printing.plates import make_cards
from service.pipeline.printing.shelf import Shelf
from service.pipeline.ready import Progress, Workshop, make_ready
from service.records.record import Collection
from service.render.compose.sheets import Parts
from service.render.pictures.prepare import PhotoSource
from service.render.reading.fonts import shipped_fonts
from service.render.task import FONTS_CONF


@dataclass(frozen=True, slots=True)
class Inked:
    """The cards of each kind on each stock, in order, their plates, and what was noticed.

    Attributes:
        groups: Cards that go into one file.
        shelf: Their plates.
        quick: What a file is written with: pictures as they stand.
        mending: The same, with pictures that are checked and made anew where they are damaged.
        findings: What was noticed of records, packings, photos, fit and ink.
    """

    groups: tuple[tuple[MadeCard, ...], ...]
    shelf: Shelf
    quick: Parts
    mending: Parts
    findings: tuple[Finding, ...]


def ink_collection(
    collection: Collection,
    photos: Mapping[str, PhotoSource],
    options: PrintOptions,
    workshop: Workshop,
    *,
    on_progress: Progress,
) -> Inked:
    """Word, fit, ink and prove the cards that are asked for; one that fails is a finding.

    Raises:
        ContentsError: When there is nothing to print.
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
    quick = make_parts(shown, workshop)
    return Inked(
        tuple(map(tuple, groups.values())),
        shelf,
        quick,
        replace(quick, pictures=shown.restored_pictures()),
        (*ready.findings, *dict.fromkeys(findings)),
    )


def make_parts(shown: Photos, workshop: Workshop) -> Parts:
    """Give what a file is written with: pictures as they stand, marks and fonts."""
    return Parts(
        shown.pictures(),
        workshop.frames.marks().__getitem__,
        tuple(shipped_fonts(FONTS_CONF.parent).items()),
    )


def _nothing_words(packings: Sequence[Packing], findings: Sequence[Finding]) -> str:
    if findings:
        return f"No card could be laid out. {findings[0].message}"
    if not packings:
        return "There is no container to print."
    return "None of the containers gets a card of the kinds asked for."
