"""The papers of the round to finished files."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from service.cards.papers.check_sheet import CheckSheet
from service.cards.papers.isolation_label import IsolationLabel
from service.cards.papers.removal_slip import RemovalSlip
from service.errors import NothingToDoError
from service.pages.rounds.isolation import fit_isolation_label
from service.pages.rounds.sheet import fit_check_sheet
from service.pages.rounds.slip import fit_removal_slip
from service.pages.rounds.spelling import spell_paper
from service.pipeline.documents.document import WHOLE_PAGE, Paper, no_photos, print_document
from service.pipeline.printing.photos import Photos
from service.pipeline.ready import Workshop
from service.printed import to_print
from service.render.pictures.prepare import PhotoSource, prepare_photos
from service.sentence import Sentence
from service.sheets.stock import Stock
from service.sheets.stocks import STOCKS, find_stock

SLIP_PAPERS = {"A4": "A4 card 4xA6", "Letter": "Letter card 4xquarter", "A6": "A6 card"}
LABEL_PAPERS = {"A4": "A4 card 2xA5", "Letter": "Letter card 2xhalf"}
"""The stock on each paper: several slips a page, or one a sheet; labels two a page."""

_UNUSABLE = to_print("cannot be used")


def print_check_sheet(
    sheet: CheckSheet,
    sources: Mapping[str, PhotoSource],
    workshop: Workshop,
    *,
    paper: str = "A4",
) -> Path:
    """Print the sheet; the file stands in a folder of its own below the scratch folder.

    Raises:
        NothingToDoError: When nothing is due.
        ProofFailedError: When a page does not read back as it should.
    """
    if not sheet.rows:
        message = Sentence("Nothing is due.")
        raise NothingToDoError(message)
    wanted = (one.photo for row in sheet.rows for one in row.photos)
    photos = _prepare(wanted, sources, workshop)
    rows = tuple(
        replace(row, photos=tuple(one for one in row.photos if one.photo in photos.thumbnails))
        for row in sheet.rows
    )
    stock = _find(WHOLE_PAGE, paper)
    spelled = spell_paper(workshop.ruler, replace(sheet, rows=rows))
    pages = fit_check_sheet(spelled, stock.label, workshop.ruler)
    return print_document(pages, Paper(stock), photos, workshop, title=to_print("Check sheet"))


def print_removal_slips(
    slips: Sequence[RemovalSlip],
    sources: Mapping[str, PhotoSource],
    workshop: Workshop,
    *,
    paper: str = "A4",
) -> Path:
    """Print slips in the order given, several on a page.

    Raises:
        NothingToDoError: When there is none.
        ProofFailedError: When a page does not read back as it should.
    """
    if not slips:
        message = Sentence("Nothing is out.")
        raise NothingToDoError(message)
    photos = _prepare((slip.photo for slip in slips), sources, workshop)
    stock = _find(SLIP_PAPERS, paper)
    pages = [
        page
        for slip in slips
        for page in fit_removal_slip(
            spell_paper(workshop.ruler, _with_photo(slip, photos)), stock.label, workshop.ruler
        )
    ]
    return print_document(pages, Paper(stock), photos, workshop, title=to_print("Removal slips"))


def print_isolation_label(
    label: IsolationLabel, workshop: Workshop, *, paper: str = "A4", copies: int = 1
) -> Path:
    """Print a label, as often as it has sides to be seen from.

    Raises:
        ProofFailedError: When a page does not read back as it should.
    """
    stock = _find(LABEL_PAPERS, paper)
    spelled = spell_paper(workshop.ruler, label)
    pages = fit_isolation_label(spelled, stock.label, workshop.ruler) * copies
    photos = no_photos(workshop)
    return print_document(pages, Paper(stock), photos, workshop, title=to_print("Isolation label"))


def _find(papers: Mapping[str, str], paper: str) -> Stock:
    return find_stock(papers[paper], STOCKS)


def _prepare(
    wanted: Iterable[str], sources: Mapping[str, PhotoSource], workshop: Workshop
) -> Photos:
    """Make the thumbnails of those photos that there are; the others are not shown."""
    named = {name: sources[name] for name in wanted if name in sources}
    thumbnails, _ = prepare_photos(
        named, cache_folder=workshop.cache_folder, workers=workshop.decoders
    )
    return Photos(thumbnails, named, workshop)


def _with_photo(slip: RemovalSlip, photos: Photos) -> RemovalSlip:
    if not slip.photo or slip.photo in photos.thumbnails:
        return slip
    return replace(slip, photo="", photo_words=_UNUSABLE)
