"""Plates against the layout engine: WeasyPrint draws the same pages whole, from the same templates.

The engine shares the templates and the fonts with the plates, and nothing of the filling: it lays
out every box by CSS 2.1. Both are read and drawn by PDFium. All cards of the demo, some of them
in two languages, and titles in eleven scripts, are compared.
"""

from __future__ import annotations

import io
import unicodedata
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import groupby
from pathlib import Path

import pytest

from service.cards.kinds import CARD_KINDS
from service.pages.page import Block, Page, PictureBlock, TextBlock
from service.pages.setting.second import PURPOSE
from service.pipeline.fitting import fit_cards
from service.pipeline.options import PrintOptions
from service.pipeline.printing.photos import Photos
from service.pipeline.read import open_source, parse_files
from service.pipeline.ready import Workshop, make_ready
from service.records.museum.language import Language
from service.records.record import Collection
from service.render.compose.sheets import Parts, write_faces
from service.render.context import Picture
from service.render.draw import draw_pages
from service.render.frames.looks import looks_in
from service.render.inking import choose_pictures
from service.render.pictures.prepare import PhotoSource
from service.render.plates.make import make_plate
from service.render.plates.plate import PictureUse
from service.render.reading.fonts import shipped_fonts
from service.render.task import FONTS_CONF, DrawTask
from service.render.typeset.setter import Typesetter
from service.wiring import open_workshop
from tests.outside.oracle import differences, farthest_mm, signs, signs_in
from tests.outside.test_scripts_printed import scripts_collection

DEMO = Path(__file__).parents[2] / "sample_records" / "port_merrow"
BILINGUAL = ("B-027", "GC-004")
MOST_OF_A_FACE = 0.003
MOST_OF_A_SLOT = 0.02
MOST_BLOB_MM2 = 1.0
MOST_APART_MM = 0.05
"""The engine cuts every shift to a thousandth of the em, which adds up along a line."""


@dataclass(frozen=True)
class Drawn:
    """Pages of one size, drawn whole and as plates."""

    pages: tuple[Page, ...]
    whole: bytes
    plates: bytes


def _pages(
    collection: Collection, sources: Mapping[str, PhotoSource], workshop: Workshop, *some: str
) -> tuple[list[Page], Photos]:
    options = PrintOptions(kinds=CARD_KINDS, containers=frozenset(some))
    ready = make_ready(collection, sources, options, workshop)
    pages = [page for card in fit_cards(ready, options, workshop.ruler, []) for page in card.pages]
    photos = Photos(ready.thumbnails, sources, workshop)
    photos.refine_for(pages)
    return pages, photos


def _draw(pages: Sequence[Page], photos: Photos, workshop: Workshop, setter: Typesetter) -> Drawn:
    jpegs = photos.pictures()
    uses = [choose_pictures(page, photos.thumbnails) for page in pages]
    shared: dict[str, PictureUse] = {}
    for use in uses:
        for name, chosen in use.items():
            if name not in shared or chosen.width_px > shared[name].width_px:
                shared[name] = chosen
    pictures = {
        name: Picture(jpegs(use.sha256), use.sha256, use.width_px, use.height_px)
        for name, use in shared.items()
    }
    (whole,) = workshop.workers.run(draw_pages, [DrawTask(tuple(pages), pictures)])
    assert isinstance(whole, bytes), whole
    plates = []
    for page in pages:
        frame = workshop.frames.find_or_make(page.kind, page.size, looks_in([page], shared))
        plates.append(make_plate(page, frame, shared, setter))
    parts = Parts(
        jpegs,
        workshop.frames.marks().__getitem__,
        tuple(shipped_fonts(FONTS_CONF.parent).items()),
    )
    target = io.BytesIO()
    write_faces(target, plates, parts)
    return Drawn(tuple(pages), whole, target.getvalue())


@pytest.fixture(scope="module")
def drawn(tmp_path_factory: pytest.TempPathFactory) -> Iterator[list[Drawn]]:
    """Draw all faces of the demo and of the scripts, those of one size together."""
    source = open_source(DEMO)
    demo, scripts = parse_files(dict(source.files)), scripts_collection()
    setter = Typesetter(FONTS_CONF)
    with open_workshop(tmp_path_factory.mktemp("data"), processes=1) as workshop:
        made = []
        cases: tuple[tuple[Collection, Mapping[str, PhotoSource], tuple[str, ...]], ...] = (
            (demo, source.photos, ()),
            (scripts, {}, ()),
            (_speak(demo, Language.POLISH), source.photos, BILINGUAL),
            (_speak(demo, Language.WELSH), source.photos, BILINGUAL),
        )
        for collection, sources, some in cases:
            pages, photos = _pages(collection, sources, workshop, *some)
            pages.sort(key=_size)
            made += [
                _draw(list(alike), photos, workshop, setter) for _, alike in groupby(pages, _size)
            ]
        yield made


def _speak(collection: Collection, language: Language) -> Collection:
    return replace(collection, museum=replace(collection.museum, second_language=language))


def _reads_plainly(block: Block) -> bool:
    return isinstance(block, TextBlock) and not any(
        unicodedata.bidirectional(sign) in {"R", "AL", "AN", "NSM"}
        or unicodedata.category(sign) in {"Mn", "Mc"}
        for sign in unicodedata.normalize("NFC", block.whole)
    )


def _size(page: Page) -> tuple[float, float]:
    return page.size.width_mm, page.size.height_mm


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_two_languages_are_among_them(drawn: list[Drawn]) -> None:
    """Every kind that speaks a second language is compared in it, where it has room for that."""
    said = {
        (page.kind, block.language)
        for face in drawn
        for page in face.pages
        for block in page.blocks
        if isinstance(block, TextBlock) and block.purpose == PURPOSE
    }
    kinds = ("lid-card", "end-label", "cover-card", "contents-list", "warning-label", "object-tag")
    wanted = {(kind, language) for kind in kinds for language in ("cy", "pl")}
    assert said >= wanted
    assert {kind for kind, _ in said - wanted} <= {"side-card", "shoulder-tag"}


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_every_sign_stands_where_the_engine_puts_it(drawn: list[Drawn]) -> None:
    """An independent reader finds the same signs in both files, at the same places.

    Texts that join, stack or run leftward are left to the pictures, and to the tests of the
    typesetter: their signs cannot be read one by one.
    """
    for face in drawn:
        for page, *both in zip(face.pages, signs(face.plates), signs(face.whole), strict=True):
            name = f"{page.kind} {page.container_number} {page.number}"
            plain = [block.rect for block in page.blocks if _reads_plainly(block)]
            ours, theirs = (signs_in(found, plain, page.size.height_mm) for found in both)
            assert ours, name
            assert Counter(one.text for one in ours) == Counter(one.text for one in theirs), name
            assert farthest_mm(ours, theirs) <= MOST_APART_MM, name


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_ink_is_the_engines_ink(drawn: list[Drawn]) -> None:
    """Few dots differ, on no face, in no slot and in no place too many.

    Symbols are left out: they are painted dot by dot, the engine's are filled paths with seams.
    """
    for face in drawn:
        for page, difference in zip(face.pages, differences(face.plates, face.whole), strict=True):
            name = f"{page.kind} {page.container_number} {page.number}"
            assert difference.share <= MOST_OF_A_FACE, name
            assert difference.largest_blob_mm2 <= MOST_BLOB_MM2, name
            for block in page.blocks:
                if isinstance(block, TextBlock | PictureBlock):
                    assert difference.share_in(block.rect) <= MOST_OF_A_SLOT, (name, block)
