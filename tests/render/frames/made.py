"""Templates of one's own, made from the shipped ones, and frames measured from them."""

from __future__ import annotations

import shutil
from collections.abc import Iterable, Iterator
from functools import cache
from pathlib import Path
from typing import TypeVar

from service.cards.kinds import CARD_KINDS
from service.contents.arrange import arrange_packings
from service.errors import ServiceError
from service.geometry import Size
from service.pages.page import Page
from service.pipeline.fitting import fit_cards
from service.pipeline.options import PrintOptions
from service.pipeline.read import open_source, parse_files
from service.pipeline.ready import Ready
from service.render.draw import draw_html, draw_pages
from service.render.frames.compile import FrameTask, compile_frame
from service.render.frames.frame import (
    Frame,
    Look,
    MarkLook,
    PictureLook,
    ShapeLook,
    SymbolLook,
    TextLook,
)
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF, TEMPLATES, DrawTask
from service.render.worker import Workers

Result = TypeVar("Result")
FACE = Size(148.0, 105.0)
DEMO = TEMPLATES.parent / "sample_records" / "port_merrow"
KIND = "lid-card"
TITLE = TextLook("title", "black")
PHOTO = PictureLook("photo", is_empty=False)
NO_PHOTO = PictureLook("photo", is_empty=True)
PANEL = ShapeLook("panel", "pale", has_outline=True, is_dashed=False)
SYMBOL = SymbolLook("symbol")
MARK = MarkLook("mark")
LOOKS: tuple[Look, ...] = (
    TITLE,
    TextLook("caption", "grey"),
    TextLook("tag", "white"),
    PHOTO,
    NO_PHOTO,
    PANEL,
    ShapeLook("rule", "black", has_outline=False, is_dashed=False),
    ShapeLook("empty-compartment", "", has_outline=True, is_dashed=True),
    ShapeLook("hole", "", has_outline=True, is_dashed=False),
    SYMBOL,
    MARK,
)


@cache
def demo_pages() -> tuple[Page, ...]:
    """Fit every card of the demo collection, without its photos."""
    collection = parse_files(dict(open_source(DEMO).files))
    packings = arrange_packings(collection).packings
    ready = Ready(collection.museum, packings, {}, ())
    ruler = PangoRuler(FONTS_CONF)
    cards = fit_cards(ready, PrintOptions(kinds=CARD_KINDS), ruler, [])
    return tuple(page for card in cards for page in card.pages)


def drawn(workers: Workers, *pages: Page, templates: Path = TEMPLATES) -> bytes:
    """Draw pages by the engine, without photos."""
    return first(workers.run(draw_pages, [DrawTask(pages, {}, templates)]))


def drawn_body(workers: Workers, body: str, size: Size) -> bytes:
    """Draw a page of one's own by the engine, its blocks placed in mm."""
    style = (
        f"@page {{ size: {size.width_mm}mm {size.height_mm}mm; margin: 0 }} body {{ margin: 0 }}"
        "html { font-family: 'Atkinson Hyperlegible Next'; font-feature-settings: 'tnum' }"
        "div { position: absolute; white-space: pre; line-height: 1.25 }"
    )
    return first(workers.run(draw_alone, [f"<html lang=en><style>{style}</style>{body}</html>"]))


def draw_alone(html: str) -> bytes:
    """Draw a document without pictures; runs in the child."""
    return draw_html(html, {})


def first(results: Iterator[Result | ServiceError]) -> Result:
    """Give the one result, or raise the error in its place."""
    (result,) = results
    if isinstance(result, ServiceError):
        raise result
    return result


def templates_with(folder: Path, *, css: str = "", card: str = "") -> Path:
    """Copy the templates with a style at the end, and a part before the slots of the lid card."""
    shutil.copytree(TEMPLATES / "print", folder / "print")
    shutil.copytree(TEMPLATES / "pictograms", folder / "pictograms")
    with (folder / "print" / "tokens.css").open("a", encoding="utf-8") as tokens:
        tokens.write(css)
    path = folder / "print" / KIND / "card.html"
    html = path.read_text(encoding="utf-8")
    path.write_text(html.replace("{%- for", f"{card}{{%- for"), encoding="utf-8")
    return folder


def frame_of(workers: Workers, templates: Path = TEMPLATES, looks: Iterable[Look] = LOOKS) -> Frame:
    """Measure a frame, or raise what was refused."""
    task = FrameTask(KIND, FACE, frozenset(looks), templates=templates)
    return first(workers.run(compile_frame, [task]))
