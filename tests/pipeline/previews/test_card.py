"""Tests for one card laid out and drawn."""

from __future__ import annotations

import io

import pytest
from PIL import Image, ImageChops

from service.cards.kinds import LID_CARD
from service.errors import NotFoundError
from service.pipeline.options import PrintOptions
from service.pipeline.previews.card import LaidCard, draw_card, lay_cards
from service.pipeline.ready import Workshop
from service.pipeline.run import print_collection
from service.records.record import Collection
from service.render.screen.pages import PageTask, draw_page
from tests.pipeline.conftest import make_photo, with_title

pytestmark = pytest.mark.print

OPTIONS = PrintOptions(kinds=(LID_CARD,))


def lay(collection: Collection, photos: dict[str, bytes], workshop: Workshop) -> LaidCard:
    """Lay out the lid card of the one box."""
    ((laid,), _) = lay_cards(collection, photos, OPTIONS, workshop)
    return laid


def test_the_picture_is_that_of_the_print(
    collection: Collection, photos: dict[str, bytes], workshop: Workshop
) -> None:
    """Dot by dot it is what PDFium shows of the card on the printed sheet, where that fills it."""
    laid = lay(collection, photos, workshop)
    size, label = laid.sizes[0], laid.fitted.stock.label
    assert size in {label, label.turned}
    ours = draw_card(laid, 1, width_px=round(size.width_mm * 8), workshop=workshop)
    (file,) = print_collection(collection, photos, OPTIONS, workshop).files
    sheet_px = round(laid.fitted.stock.page.width_mm * 8)
    theirs = draw_page(PageTask(file.path, 1, sheet_px), workshop.workers)
    card = Image.open(io.BytesIO(ours)).convert("L")
    sheet = Image.open(io.BytesIO(theirs.png)).convert("L")
    rect = laid.fitted.stock.position_rect(1)
    box = [round(side * 8) for side in (rect.x_mm, rect.y_mm, rect.right_mm, rect.bottom_mm)]
    cut = sheet.crop((box[0], box[1], box[2], box[3]))
    if size != label:
        cut = cut.rotate(90, expand=True)
    assert cut.size == card.size
    unlike = sum(ImageChops.difference(card, cut).histogram()[128:]) / (card.width * card.height)
    ink = sum(card.histogram()[:128]) / (card.width * card.height)
    assert ink > 0.02
    assert unlike < ink / 20


def test_the_tag_follows_what_is_seen(
    collection: Collection, photos: dict[str, bytes], workshop: Workshop
) -> None:
    """Another title, photo or width is another picture; the same records give the same tag."""
    laid = lay(collection, photos, workshop)
    tag = laid.tag(1, width_px=900)
    assert lay(collection, photos, workshop).tag(1, width_px=900) == tag
    renamed = lay(with_title(collection, "Lead, sounding"), photos, workshop)
    other = lay(collection, {"lead.jpg": make_photo("#f0f0f0")}, workshop)
    tags = {
        tag,
        laid.tag(1, width_px=901),
        renamed.tag(1, width_px=900),
        other.tag(1, width_px=900),
    }
    assert len(tags) == 4


def test_a_page_that_is_not_there_is_told(
    collection: Collection, photos: dict[str, bytes], workshop: Workshop
) -> None:
    """A lid card of two objects has one page."""
    laid = lay(collection, photos, workshop)
    for page in (0, 2):
        with pytest.raises(NotFoundError, match="page of this lid card"):
            laid.tag(page, width_px=900)
