"""Tests for plates made and proved together."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest

from service.errors import ProofFailedError, TemplateError
from service.geometry import Rect
from service.pages.page import Page
from service.render.frames.frame import Frame
from service.render.frames.looks import looks_in
from service.render.frames.store import FrameStore
from service.render.inking import Chunk, PlateTask, choose_pictures, ink_and_prove
from service.render.pictures.thumbnails import Grade, Thumbnail, Thumbnails
from service.render.plates.pack import unpack_plate
from service.render.plates.plate import PictureUse
from tests.render.made import PHOTO, mark, page, photo, symbol, text

WHOLE = page(text("Brass gauge"), photo(), mark(), symbol())
USE = PictureUse("a" * 64, 120, 90)


@pytest.fixture(scope="module")
def frames(tmp_path_factory: pytest.TempPathFactory) -> Iterator[FrameStore]:
    """Give the frames of the real templates."""
    store = FrameStore(tmp_path_factory.mktemp("frames"))
    yield store
    store.close()


def task(key: str, made: Page, frame: Frame) -> PlateTask:
    """Ask for the plate of a page."""
    return PlateTask(key, made, frame, {PHOTO: USE})


def sizes(*widths_px: int) -> Thumbnails:
    """Give a photo of 4 to 3 in these widths."""
    made = (Thumbnail(px, px * 3 // 4, f"{px:064d}", 1, b"") for px in widths_px)
    return Thumbnails(tuple(made), Grade.SMALL)


@pytest.mark.print
def test_one_bad_plate_leaves_the_others(frames: FrameStore) -> None:
    """Each task has its own answer: a packed plate, or what is wrong with it."""
    frame = frames.find_or_make(WHOLE.kind, WHOLE.size, looks_in([WHOLE], {PHOTO: USE}))
    off = replace(text("lost"), rect=Rect(200, 10, 40, 5))
    unknown = replace(text("x"), purpose="nobody's")
    chunk = Chunk(
        (
            task("a", WHOLE, frame),
            task("b", page(*WHOLE.blocks, off), frame),
            task("c", page(unknown), frame),
            task("d", WHOLE, frame),
        ),
        frames.marks(),
    )
    first, second, third, fourth = ink_and_prove(chunk)
    assert isinstance(first, bytes)
    proved = unpack_plate(first, key="a")
    assert proved is not None
    assert (proved.proof.lines, proved.proof.symbols) == (1, 1)
    assert (proved.proof.pictures, proved.proof.marks) == (1, 1)
    assert isinstance(second, ProofFailedError)
    assert isinstance(third, TemplateError)
    assert isinstance(fourth, bytes)
    assert unpack_plate(fourth, key="d") == proved


def test_a_photo_is_taken_as_large_as_it_is_shown() -> None:
    """Shown 30 and 10 mm wide on one page, a photo needs 355 pixels for both."""
    small = replace(photo(), rect=Rect(60, 5, 10, 10))
    chosen = choose_pictures(page(photo(), small), {PHOTO: sizes(100, 200, 400, 800)})
    assert chosen == {PHOTO: PictureUse(f"{400:064d}", 400, 300)}


def test_a_photo_nobody_has_is_left_out() -> None:
    """A page may name a photo that could not be used."""
    assert choose_pictures(page(photo()), {}) == {}
