"""Tests for drawing and proving in child processes."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.kinds import LID_CARD, compose_cards
from service.contents.arrange import arrange_packings
from service.geometry import Rect, Size
from service.pages.fit import Fitting, fit_card
from service.pages.page import Page, TextBlock
from service.pipeline.faces import Face, draw_faces, make_task
from service.pipeline.ready import Workshop
from service.records.record import Collection
from service.render.pictures.prepare import prepare_photos


def _page(collection: Collection, workshop: Workshop) -> Page:
    (packing,) = arrange_packings(collection).packings
    (card,) = compose_cards(packing, collection.museum, kinds=(LID_CARD,))
    return fit_card(card, Size(210, 148), Fitting(workshop.ruler))[0]


@pytest.mark.print
def test_bad_page_never_stops_the_others(
    collection: Collection, photos: dict[str, bytes], workshop: Workshop
) -> None:
    """Of a chunk with one page that fails its proof, the other pages are still drawn."""
    ready, _ = prepare_photos(photos, cache_folder=workshop.cache_folder, workers=workshop.workers)
    good = _page(collection, workshop)
    # A block that says more than is drawn: its second line lies outside the page.
    lost = next(b for b in good.blocks if isinstance(b, TextBlock) and b.purpose == "caption")
    outside = replace(lost, rect=Rect(400, 10, 50, 5))
    bad = replace(good, blocks=(*good.blocks, outside))
    faces = [Face(0, "a", good), Face(1, "a", bad), Face(2, "a", good)]
    drawn, failed = draw_faces(faces, ready, workshop.workers)
    assert sorted(face.index for chunk in drawn for face in chunk.faces) == [0, 2]
    assert list(failed) == [1]


def test_pictures_are_as_large_as_their_largest_frame(
    collection: Collection, photos: dict[str, bytes], workshop: Workshop
) -> None:
    """A photo used twice is given once, sharp enough for the larger of its frames."""
    ready, _ = prepare_photos(photos, cache_folder=workshop.cache_folder, workers=workshop.workers)
    page = _page(collection, workshop)
    task = make_task([page, page], ready)
    assert set(task.pictures) == {"lead.jpg"}
