"""ReportLab: a canvas with everything at its place, lines broken at blanks.

HarfBuzz shapes only where a script needs it; pictures and pictograms are kept once a file.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from pathlib import Path

from reportlab import rl_config
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

from service.symbols.symbol import Symbol
from service.units import points_from_mm
from tests.benchmarks.content import measures
from tests.benchmarks.content.records import Card, Item, Label, Record, Warn
from tests.benchmarks.content.store import FONTS
from tests.benchmarks.engine import Job, run_engine
from tests.benchmarks.rivals.markup import dark_runs

_MAIN = "AtkinsonHyperlegibleNext-Regular", "AtkinsonHyperlegibleNext-Bold"
_FACES = {
    "el": "NotoSans-Regular",
    "ar": "NotoSansArabic-Regular",
    "ja": "NotoSansJP-Regular",
    "hi": "NotoSansDevanagari-Regular",
}
_SHAPED = ("ar", "hi")
_BLACK, _GREY, _LABEL_GREY = 0.07, 0.33, 0.27
_RED = (0.73, 0, 0)


class ReportLab:
    """Draws one file; fonts are read once a process."""

    def __init__(self, job: Job) -> None:
        """Read the fonts of the languages there are."""
        rl_config.useA85 = 0
        self._job = job
        for name in (*_MAIN, *_FACES.values()):
            is_shaped = name in {_FACES[language] for language in _SHAPED}
            pdfmetrics.registerFont(TTFont(name, FONTS / f"{name}.ttf", shapable=is_shaped))

    def render(self, records: Sequence[Record], out: Path) -> None:
        """Draw every page and save the file."""
        size = (measures.CARD_WIDTH, measures.CARD_HEIGHT)
        if not self._job.is_cards:
            size = (measures.SHEET_WIDTH, measures.SHEET_HEIGHT)
        canvas = Canvas(str(out), pagesize=tuple(map(points_from_mm, size)), pageCompression=1)
        sheet = _Sheet(canvas, self._job, size[1])
        sheet.keep_marks()
        if self._job.is_cards:
            _draw_cards(sheet, records)
        else:
            _draw_labels(sheet, records)
        canvas.save()

    def close(self) -> None:
        """Nothing was started."""


def _draw_cards(sheet: _Sheet, records: Sequence[Record]) -> None:
    for card in records:
        assert isinstance(card, Card)
        sheet.draw_card(card)
        sheet.canvas.showPage()


def _draw_labels(sheet: _Sheet, records: Sequence[Record]) -> None:
    for index, label in enumerate(records):
        assert isinstance(label, Label)
        place = index % measures.LABELS_A_SHEET
        sheet.draw_label(label, *measures.label_corner(place))
        if place == measures.LABELS_A_SHEET - 1 or label is records[-1]:
            sheet.canvas.showPage()


class _Sheet:
    """A canvas measured in mm from the top left corner."""

    def __init__(self, canvas: Canvas, job: Job, height_mm: float) -> None:
        self.canvas = canvas
        self._job = job
        self._height_mm = height_mm
        self._lines = lru_cache(20_000)(_broken)

    def keep_marks(self) -> None:
        """Keep the pictograms as forms of 24 x 24 points."""
        for code, operators in self._job.marks.items():
            self.canvas.beginForm(code, 0, 0, 24, 24)
            self.canvas._code.append(operators)  # noqa: SLF001 - it offers no other way
            self.canvas.endForm()

    def draw_card(self, card: Card) -> None:
        bold, regular = _MAIN[1], _MAIN[0]
        self.canvas.setFillGray(_BLACK)
        self._text(card.number, (5, 19), bold, 48)
        self._text(card.title, (92, 11), bold, 15)
        self._text(card.subtitle, (92, 16.5), regular, 9)
        for index, item in enumerate(card.items):
            self._item(item, *measures.photo_corner(index))
        top = measures.GRID_TOP
        self._symbol(card, measures.SIDE_LEFT, top, measures.CARD_SYMBOL)
        for index, (heading, fact) in enumerate(card.facts):
            below = 61.5 + 10.5 * index
            self.canvas.setFillGray(_GREY)
            self._text(heading, (measures.SIDE_LEFT, below), regular, 7)
            self.canvas.setFillGray(_BLACK)
            self._text(fact, (measures.SIDE_LEFT, below + 4.6), bold, 12)
        for index, warn in enumerate(card.warnings):
            self._warn(warn, measures.warn_left(index))

    def draw_label(self, label: Label, left: float, top: float) -> None:
        self.canvas.setFillGray(_BLACK)
        self._symbol(label, left + 40.5, top + 14, measures.LABEL_SYMBOL)
        self._text(label.number, (left + 3, top + 9), _MAIN[1], 17)
        face = _FACES.get(label.language, _MAIN[0])
        lines = self._lines(label.title, face, 8.5, 35)[:3]
        for index, line in enumerate(lines):
            self._line(line, (left + 3, top + 17 + 3.6 * index), (face, 8.5), label.language)
        self.canvas.setFillGray(_LABEL_GREY)
        self._line(label.note, (left + 3, top + 32), (face, 7), label.language)

    def _item(self, item: Item, left: float, top: float) -> None:
        side = points_from_mm(measures.PHOTO)
        x, y = points_from_mm(left), self._up(top + measures.PHOTO)
        self.canvas.drawImage(str(self._job.store.thumbnail(item.picture)), x, y, side, side)
        self._text(item.number, (left, top + 41.2), _MAIN[1], 7.5)
        face = _FACES.get(item.language, _MAIN[0])
        below = top + 41.2
        for line in self._lines(item.title, face, 7, measures.PHOTO)[:2]:
            below += 2.963
            self._line(line, (left, below), (face, 7), item.language)
        self.canvas.setFillGray(_GREY)
        self._line(item.note, (left, below + 2.68), (face, 6), item.language)
        self.canvas.setFillGray(_BLACK)

    def _warn(self, warn: Warn, left: float) -> None:
        canvas, top = self.canvas, measures.WARN_TOP
        canvas.setStrokeColorRGB(*_RED)
        canvas.setLineWidth(points_from_mm(0.5))
        width, height = measures.WARN_WIDTH - 0.5, measures.WARN_HEIGHT - 0.5
        x, y = points_from_mm(left + 0.25), self._up(top + measures.WARN_HEIGHT - 0.25)
        canvas.rect(x, y, points_from_mm(width), points_from_mm(height))
        canvas.saveState()
        canvas.translate(points_from_mm(left + 2), self._up(top + 2.2 + measures.MARK))
        scale = points_from_mm(measures.MARK) / 24
        canvas.scale(scale, scale)
        canvas.doForm(warn.mark)
        canvas.restoreState()
        self._text(warn.head, (left + 14, top + 5), _MAIN[1], 10)
        for index, line in enumerate(self._lines(warn.text, _MAIN[0], 6.5, 48)[:2]):
            self._text(line, (left + 14, top + 8.4 + 2.75 * index), _MAIN[0], 6.5)

    def _symbol(self, record: Record, left: float, top: float, side: float) -> None:
        symbol: Symbol = self._job.symbols[record.address]
        module = points_from_mm(side / symbol.side_modules)
        x, y = points_from_mm(left), self._up(top)
        path = self.canvas.beginPath()
        for row, column, length in dark_runs(symbol):
            path.rect(x + column * module, y - (row + 1) * module, length * module, module)
        self.canvas.drawPath(path, stroke=0, fill=1)

    def _line(
        self, text: str, place: tuple[float, float], face: tuple[str, float], language: str
    ) -> None:
        if language not in _SHAPED:
            self._text(text, place, *face)
            return
        self.canvas.setFont(*face)
        x, y = points_from_mm(place[0]), self._up(place[1])
        if language == "ar":
            width = measures.PHOTO if self._job.is_cards else 35
            self.canvas.drawRightString(x + points_from_mm(width), y, text, shaping=True)
        else:
            self.canvas.drawString(x, y, text, shaping=True)

    def _text(self, text: str, place: tuple[float, float], face: str, size_pt: float) -> None:
        self.canvas.setFont(face, size_pt)
        self.canvas.drawString(points_from_mm(place[0]), self._up(place[1]), text)

    def _up(self, below_mm: float) -> float:
        return points_from_mm(self._height_mm - below_mm)


def _broken(text: str, face: str, size_pt: float, width_mm: float) -> list[str]:
    """Break a text at blanks, as many words to a line as there is room for."""
    width = points_from_mm(width_mm)
    if pdfmetrics.stringWidth(text, face, size_pt) <= width:
        return [text]
    lines, line = [], ""
    for word in text.split(" "):
        longer = f"{line} {word}" if line else word
        if line and pdfmetrics.stringWidth(longer, face, size_pt) > width:
            lines.append(line)
            line = word
        else:
            line = longer
    return [*lines, line]


if __name__ == "__main__":
    run_engine(ReportLab)
