"""LibreOffice: a flat text document whose frames hang on the page, converted without a window."""

from __future__ import annotations

import base64
import shutil
import subprocess
import tempfile
from collections.abc import Sequence
from pathlib import Path
from xml.sax.saxutils import escape

from tests.benchmarks.content import measures
from tests.benchmarks.content.records import Card, Label, Record
from tests.benchmarks.content.store import MARKS
from tests.benchmarks.engine import Job, run_engine
from tests.benchmarks.rivals.markup import symbol_svg
from tests.benchmarks.rivals.opendocument import FAMILIES, head, tail


class LibreOffice:
    """One document of all records."""

    def __init__(self, job: Job) -> None:
        """Take a folder of its own."""
        self._job = job
        self._folder = Path(tempfile.mkdtemp())

    def render(self, records: Sequence[Record], out: Path) -> None:
        """Write the document, and have it converted."""
        document = _Document(self._job)
        step = 1 if self._job.is_cards else measures.LABELS_A_SHEET
        for start in range(0, len(records), step):
            document.add_page(records[start : start + step])
        source = self._folder / "page.fodt"
        source.write_text(document.text, "utf-8")
        words = ["--headless", "--convert-to", "pdf", "--outdir", str(self._folder), str(source)]
        profile = f"-env:UserInstallation={(self._folder / 'profile').as_uri()}"
        program = shutil.which("soffice") or ""
        subprocess.run([program, profile, *words], check=True, capture_output=True)
        shutil.move(source.with_suffix(".pdf"), out)

    def close(self) -> None:
        """Remove what was written."""
        shutil.rmtree(self._folder)


class _Document:
    def __init__(self, job: Job) -> None:
        self._job = job
        self._pages = 0
        self._parts: list[str] = []

    @property
    def text(self) -> str:
        cards = self._job.is_cards
        width = measures.CARD_WIDTH if cards else measures.SHEET_WIDTH
        height = measures.CARD_HEIGHT if cards else measures.SHEET_HEIGHT
        return "".join((head(width, height), *self._parts, tail(self._pages)))

    def add_page(self, records: Sequence[Record]) -> None:
        self._pages += 1
        for index, record in enumerate(records):
            if isinstance(record, Card):
                self._add_card(record)
            else:
                self._add_label(record, *measures.label_corner(index))

    def _add_card(self, card: Card) -> None:
        self._box((5, 3), (85, 21), _line("box", card.number))
        self._box((92, 6), (110, 16), _line("head", card.title) + _line("sub", card.subtitle))
        for index, item in enumerate(card.items):
            left, top = measures.photo_corner(index)
            photo = self._job.store.thumbnail(item.picture).as_uri()
            self._image((left, top), measures.PHOTO, f'xlink:href="{photo}"')
            words = _line("number", item.number) + _line("title", item.title, item.language)
            words += _line("note", item.note, item.language)
            self._box((left, top + 38.5), (38, 12), words)
        self._symbol(card, (measures.SIDE_LEFT, measures.GRID_TOP), measures.CARD_SYMBOL)
        facts = (_line("key", heading) + _line("fact", fact) for heading, fact in card.facts)
        self._box((measures.SIDE_LEFT, 58), (35, 60), "".join(facts))
        for index, warn in enumerate(card.warnings):
            left, top = measures.warn_left(index), measures.WARN_TOP
            size = measures.WARN_WIDTH, measures.WARN_HEIGHT
            self._box((left, top), size, "<text:p/>", style="ruled")
            mark = (MARKS / f"{warn.mark}.svg").as_uri()
            self._image((left + 2, top + 2.2), measures.MARK, f'xlink:href="{mark}"')
            words = _line("warn", warn.head) + _line("words", warn.text)
            self._box((left + 14, top + 1), (48, 13), words)

    def _add_label(self, label: Label, left: float, top: float) -> None:
        self._symbol(label, (left + 40.5, top + 14), measures.LABEL_SYMBOL)
        self._box((left + 3, top + 2), (60, 9), _line("large", label.number))
        self._box((left + 3, top + 13), (35, 15), _line("title", label.title, label.language))
        self._box((left + 3, top + 29), (35, 5), _line("note", label.note, label.language))

    def _box(
        self, at: tuple[float, float], size: tuple[float, float], words: str, style: str = "bare"
    ) -> None:
        inner = f"<draw:text-box>{words}</draw:text-box>"
        self._parts.append(self._frame(at, size, inner, style))

    def _image(self, at: tuple[float, float], side: float, address: str, inner: str = "") -> None:
        image = f"<draw:image {address}>{inner}</draw:image>"
        self._parts.append(self._frame(at, (side, side), image, "bare"))

    def _symbol(self, record: Record, at: tuple[float, float], side: float) -> None:
        drawn = symbol_svg(self._job.symbols[record.address])
        data = base64.b64encode(drawn.encode("ascii")).decode("ascii")
        self._image(at, side, "", f"<office:binary-data>{data}</office:binary-data>")

    def _frame(
        self, at: tuple[float, float], size: tuple[float, float], inner: str, style: str
    ) -> str:
        return (
            f'<draw:frame draw:style-name="{style}" text:anchor-type="page"'
            f' text:anchor-page-number="{self._pages}" svg:x="{at[0]:.2f}mm" svg:y="{at[1]:.2f}mm"'
            f' svg:width="{size[0]}mm" svg:height="{size[1]}mm">{inner}</draw:frame>'
        )


def _line(style: str, text: str, language: str = "") -> str:
    name = style + (language if language in FAMILIES else "")
    return f'<text:p text:style-name="{name}">{escape(text)}</text:p>'


if __name__ == "__main__":
    run_engine(LibreOffice)
