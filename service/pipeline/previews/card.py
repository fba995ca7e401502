"""One card, laid out as a print run would do it now, and drawn page by page as it is looked at."""

from __future__ import annotations

import hashlib
import io
from collections.abc import Mapping
from dataclasses import dataclass, replace

from service.errors import ContentsError, NotFoundError
from service.findings import Finding
from service.geometry import Size
from service.pages.page import Page
from service.pipeline.fitting import fit_cards
from service.pipeline.options import FittedCard, PrintOptions
from service.pipeline.printing.ink import make_parts
from service.pipeline.printing.photos import Photos
from service.pipeline.printing.plates import make_cards
from service.pipeline.printing.shelf import Shelf
from service.pipeline.ready import Workshop, make_ready
from service.records.record import Collection
from service.render.compose.sheets import write_faces
from service.render.frames.versions import frames_sha256
from service.render.inking import choose_pictures
from service.render.pictures.prepare import PhotoSource
from service.render.plates.key import plate_key
from service.render.screen.pages import PageTask, draw_page, drawing_sha256
from service.sentence import Sentence


@dataclass(frozen=True, slots=True)
class LaidCard:
    """A card with its pages, not yet inked, the photos they show, and what was noticed."""

    fitted: FittedCard
    photos: Photos
    findings: tuple[Finding, ...]

    @property
    def sizes(self) -> tuple[Size, ...]:
        """The finished size of each page."""
        return tuple(page.size for page in self.fitted.pages)

    def page(self, number: int) -> Page:
        """Give a page, counted from 1.

        Raises:
            NotFoundError: When the card has no such page.
        """
        if not 1 <= number <= len(self.fitted.pages):
            raise NotFoundError(
                str(number),
                what=Sentence("page of this {lower},", lower=self.fitted.kind.name.lower()),
            )
        return self.fitted.pages[number - 1]

    def tag(self, page: int, *, width_px: int) -> str:
        """Name the picture of a page, counted from 1, by all that decides how it looks.

        Raises:
            NotFoundError: When the card has no such page.
        """
        shown = self.page(page)
        pictures = choose_pictures(shown, self.photos.thumbnails)
        words = (plate_key(shown, frames_sha256(), pictures), drawing_sha256(), str(width_px))
        return hashlib.sha256("\n".join(words).encode()).hexdigest()


def lay_cards(
    collection: Collection,
    photos: Mapping[str, PhotoSource],
    options: PrintOptions,
    workshop: Workshop,
) -> tuple[tuple[LaidCard, ...], tuple[Finding, ...]]:
    """Word and fit the cards asked for; nothing is inked. One that cannot be is a finding."""
    ready = make_ready(collection, photos, options, workshop)
    failed: list[Finding] = []
    cards = []
    for fitted in fit_cards(ready, options, workshop.ruler, failed):
        shown = Photos(ready.thumbnails, photos, workshop)
        shown.refine_for(fitted.pages)
        cards.append(LaidCard(fitted, shown, ready.findings))
    return tuple(cards), (*ready.findings, *failed)


def draw_card(laid: LaidCard, page: int, *, width_px: int, workshop: Workshop) -> bytes:
    """Give a page of a card as PNG, a raster of a PDF that holds this page alone.

    Raises:
        NotFoundError: When the card has no such page.
        ContentsError: When the page cannot be inked, or does not read back as it should.
        JobError: When it cannot be drawn.
    """
    single = replace(laid.fitted, pages=(laid.page(page),))
    shelf = Shelf()
    ((made, error),) = make_cards([single], laid.photos, workshop, shelf)
    if error is not None:
        message = Sentence("{name}: {error}", name=made.kind.name, error=error)
        raise ContentsError(message)
    plates = shelf.plates([face.key for face in made.faces])
    parts = replace(make_parts(laid.photos, workshop), pictures=laid.photos.restored_pictures())
    pdf = io.BytesIO()
    write_faces(pdf, list(plates.values()), parts, title=made.kind.name)
    return draw_page(PageTask(pdf.getvalue(), 1, width_px), workshop.workers).png
