"""The benchmark's cards and labels as pages: fixed places, texts broken as the fit breaks them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache

from service.geometry import Rect, Size
from service.pages.page import (
    Block,
    MarkBlock,
    Page,
    PictureBlock,
    Shade,
    ShapeBlock,
    SymbolBlock,
    TextBlock,
    TextStyle,
)
from service.pages.ruler import Ruler
from service.symbols.symbol import QUIET_ZONE_MODULES, Symbol
from tests.benchmarks.content import measures
from tests.benchmarks.content.records import Card, Item, Label, Record, Warn

CARD_KIND, LABEL_KIND = "lid-card", "end-label"
CARD_SIZE = Size(measures.CARD_WIDTH, measures.CARD_HEIGHT)
LABEL_SIZE = Size(measures.LABEL_WIDTH, measures.LABEL_HEIGHT)
_LEADING_RATIO = 1.2
_ANY_WIDTH_MM = 113.0
_TOLD_APART = {"ar", "hi", "ja"}
"""Languages the fit tells from the letters; the others are left to the shaper."""


@dataclass(frozen=True, slots=True)
class _Setting:
    """How one sort of text is set."""

    purpose: str
    size_pt: float
    weight: int = 400
    shade: Shade = Shade.BLACK
    max_lines: int = 1


_NUMBER = _Setting("container-number", 48, 700)
_TITLE = _Setting("title", 15, 700)
_SUBTITLE = _Setting("subtitle", 9)
_ITEM_NUMBER = _Setting("object-number", 7.5, 700)
_ITEM_TITLE = _Setting("caption", 7, max_lines=2)
_ITEM_NOTE = _Setting("note", 6, shade=Shade.GREY)
_HEADING = _Setting("heading", 7, shade=Shade.GREY)
_FACT = _Setting("fact", 12, 700)
_WARN_HEAD = _Setting("warning", 10, 700)
_WARN_TEXT = _Setting("warning-words", 6.5, max_lines=2)
_LABEL_NUMBER = _Setting("object-number", 17, 700)
_LABEL_TITLE = _Setting("caption", 8.5, max_lines=3)
_LABEL_NOTE = _Setting("note", 7, shade=Shade.GREY)


@dataclass(frozen=True, slots=True)
class PageMaker:
    """Makes pages of records; `symbols` are ready-made, by what they hold."""

    ruler: Ruler
    symbols: Mapping[str, Symbol]

    def page_of(self, record: Record) -> Page:
        """Give a record's one page."""
        if isinstance(record, Card):
            blocks = tuple(self._card(record))
            return Page(CARD_KIND, record.number, record.title, 1, 1, CARD_SIZE, blocks)
        blocks = tuple(self._label(record))
        return Page(LABEL_KIND, record.number, record.title, 1, 1, LABEL_SIZE, blocks)

    def _card(self, card: Card) -> Iterator[Block]:
        yield self._text(_NUMBER, card.number, (5, 2.8))
        yield self._text(_TITLE, card.title, (92, 6))
        yield self._text(_SUBTITLE, card.subtitle, (92, 13.4))
        for index, item in enumerate(card.items):
            yield from self._item(item, *measures.photo_corner(index))
        side_mm = measures.CARD_SYMBOL
        yield self._symbol(card.address, measures.SIDE_LEFT, measures.GRID_TOP, side_mm)
        for index, (heading, fact) in enumerate(card.facts):
            top_mm = 59 + 10.5 * index
            yield self._text(_HEADING, heading, (measures.SIDE_LEFT, top_mm))
            yield self._text(_FACT, fact, (measures.SIDE_LEFT, top_mm + 3))
        for index, warn in enumerate(card.warnings):
            yield from self._warn(warn, measures.warn_left(index))

    def _label(self, label: Label) -> Iterator[Block]:
        language = label.language
        yield self._text(_LABEL_NUMBER, label.number, (3, 3))
        yield self._text(_LABEL_TITLE, label.title, (3, 14), 35, language)
        yield self._text(_LABEL_NOTE, label.note, (3, 29.5), 35, language)
        yield self._symbol(label.address, 40.5, 14, measures.LABEL_SYMBOL)

    def _item(self, item: Item, left_mm: float, top_mm: float) -> Iterator[Block]:
        side_mm, language = measures.PHOTO, item.language
        frame = Rect(left_mm, top_mm, side_mm, side_mm)
        yield PictureBlock("photo", frame, photo_name(item.picture), item.title)
        top_mm += 38.6
        yield self._text(_ITEM_NUMBER, item.number, (left_mm, top_mm), side_mm)
        title = self._text(_ITEM_TITLE, item.title, (left_mm, top_mm + 3.18), side_mm, language)
        yield title
        yield self._text(_ITEM_NOTE, item.note, (left_mm, title.rect.bottom_mm), side_mm, language)

    def _warn(self, warn: Warn, left_mm: float) -> Iterator[Block]:
        top_mm, side_mm = measures.WARN_TOP, measures.MARK
        strip = Rect(left_mm, top_mm, measures.WARN_WIDTH, measures.WARN_HEIGHT)
        yield ShapeBlock("warning-frame", strip, outline_mm=0.5)
        yield MarkBlock("mark", Rect(left_mm + 2, top_mm + 2.2, side_mm, side_mm), warn.mark, "")
        yield self._text(_WARN_HEAD, warn.head, (left_mm + 14, top_mm + 1.6), 48)
        yield self._text(_WARN_TEXT, warn.text, (left_mm + 14, top_mm + 5.9), 48)

    def _text(
        self,
        setting: _Setting,
        text: str,
        corner_mm: tuple[float, float],
        width_mm: float = _ANY_WIDTH_MM,
        language: str = "",
    ) -> TextBlock:
        """Break a text at its place, and keep as many lines as there is room for."""
        language = language if language in _TOLD_APART else ""
        style = _style(setting, language)
        broken = self.ruler.break_text(text, style, width_mm=width_mm)
        lines = broken.lines[: setting.max_lines]
        rect = Rect(*corner_mm, width_mm, len(lines) * style.leading_mm)
        return TextBlock(setting.purpose, rect, lines, style, text, broken.direction, language)

    def _symbol(self, address: str, left_mm: float, top_mm: float, side_mm: float) -> SymbolBlock:
        """Put the dark part at its place; the clear margin lies around it."""
        symbol = self.symbols[address]
        module_mm = side_mm / symbol.side_modules
        clear_mm = QUIET_ZONE_MODULES * module_mm
        full_mm = side_mm + 2 * clear_mm
        rect = Rect(left_mm - clear_mm, top_mm - clear_mm, full_mm, full_mm)
        return SymbolBlock("symbol", rect, symbol, module_mm, QUIET_ZONE_MODULES, address)


def photo_name(number: int) -> str:
    """Name a photo the way a record does."""
    return f"{number:04d}.jpg"


@cache
def _style(setting: _Setting, language: str) -> TextStyle:
    return TextStyle(
        setting.size_pt,
        setting.weight,
        _LEADING_RATIO,
        shade=setting.shade,
        language=language,
    )
