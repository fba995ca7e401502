"""Who makes what in the benchmark: each row is one engine, one kind of page and one number."""

from __future__ import annotations

import shutil
from dataclasses import dataclass, replace
from importlib.util import find_spec

from tests.benchmarks.rivals.browser import find_browser

CARDS, LABELS, MANY_CARDS = 200, 2100, 2000
FEW_CARDS, FEW_LABELS = 20, 210
_QUICK_RATIO = 10


@dataclass(frozen=True, slots=True)
class Row:
    """`key` names the row, `module` the script, `words` what a reader is told.

    `rounds` is the most often it is worth running; `draws` says that a PDF comes of it.
    """

    key: str
    words: str
    module: str
    kind: str
    count: int
    options: tuple[str, ...] = ()
    rounds: int = 99
    draws: bool = True
    package: str = ""

    def reduced(self) -> Row:
        """Give the row for a quick look."""
        count = self.count if "warm" in self.options else max(2, self.count // _QUICK_RATIO)
        return replace(self, count=count, rounds=1)

    @property
    def is_installed(self) -> bool:
        """Whether this machine has what the row needs."""
        if self.package == "chromium":
            return find_browser() is not None
        if self.package == "soffice":
            return shutil.which("soffice") is not None
        return not self.package or find_spec(self.package) is not None


_OURS = "ours.filling"
_WEASYPRINT, _CHROMIUM = "rivals.weasyprint_engine", "rivals.chromium_engine"
_TYPST, _REPORTLAB = "rivals.typst_engine", "rivals.reportlab_engine"
_LIBREOFFICE = "rivals.libreoffice_engine"


def _ours() -> list[Row]:
    new, kept = "Underlid, new", "Underlid, from kept plates"
    return [
        Row("cards ours", new, _OURS, "card", CARDS),
        Row("cards ours proved", f"{new}, proved", _OURS, "card", CARDS, ("proof",)),
        Row("cards reprint", kept, _OURS, "card", CARDS, ("kept",)),
        Row("cards reprint proved", f"{kept}, proved", _OURS, "card", CARDS, ("kept", "proof")),
        Row("cards one changed", f"{kept}, one changed", _OURS, "card", CARDS, ("changed",)),
        Row("cards many", f"{new}, 2,000", _OURS, "card", MANY_CARDS, (), 2),
        Row("labels ours", new, _OURS, "label", LABELS),
        Row("labels ours proved", f"{new}, proved", _OURS, "label", LABELS, ("proof",)),
        Row("labels reprint", kept, _OURS, "label", LABELS, ("kept",)),
        Row("labels reprint proved", f"{kept}, proved", _OURS, "label", LABELS, ("kept", "proof")),
        Row("cards tagged ours", new, _OURS, "card", CARDS, ("tags",)),
        Row("labels tagged ours", new, _OURS, "label", LABELS, ("tags",)),
        Row("warm ours", new, _OURS, "card", 45, ("warm",)),
    ]


def _rivals(kind: str, count: int) -> list[Row]:
    prefix = f"{kind}s"
    tagged = f"{prefix} tagged"
    tags = ("tags",)
    return [
        Row(f"{prefix} weasyprint", "WeasyPrint, natural", _WEASYPRINT, kind, count, (), 2),
        Row(f"{prefix} chromium", "Chromium", _CHROMIUM, kind, count, (), 3, package="chromium"),
        Row(f"{prefix} typst", "Typst", _TYPST, kind, count, (), package="typst"),
        Row(f"{prefix} reportlab", "ReportLab", _REPORTLAB, kind, count, (), package="reportlab"),
        Row(f"{tagged} weasyprint", "WeasyPrint, natural", _WEASYPRINT, kind, count, tags, 1),
        Row(f"{tagged} chromium", "Chromium", _CHROMIUM, kind, count, tags, 2, package="chromium"),
        Row(f"{tagged} typst", "Typst", _TYPST, kind, count, tags, package="typst"),
    ]


def _others() -> list[Row]:
    lean, warm = ("lean",), ("warm",)
    office = Row("cards libreoffice", "LibreOffice, 20", _LIBREOFFICE, "card", FEW_CARDS, (), 1)
    office = replace(office, package="soffice")
    return [
        office,
        replace(
            office,
            key="labels libreoffice",
            words="LibreOffice, 210",
            kind="label",
            count=FEW_LABELS,
        ),
        Row("cards lean", "WeasyPrint, leanest", _WEASYPRINT, "card", CARDS, lean, 2),
        Row("warm weasyprint", "WeasyPrint, natural", _WEASYPRINT, "card", 45, warm, 2),
        Row("warm chromium", "Chromium", _CHROMIUM, "card", 45, warm, 2, package="chromium"),
        Row("warm typst", "Typst", _TYPST, "card", 45, warm, package="typst"),
        Row("warm reportlab", "ReportLab", _REPORTLAB, "card", 45, warm, package="reportlab"),
        Row("many typst", "Typst, 2,000", _TYPST, "card", MANY_CARDS, (), 1, package="typst"),
        Row("copying", "pictures read and written", "parts.copying", "card", CARDS, draws=False),
        Row("cards encoding", "symbols", "parts.encoding", "card", CARDS, (), 2, draws=False),
        Row("labels encoding", "symbols", "parts.encoding", "label", LABELS, (), 1, draws=False),
        Row("likeness", "cards beside", "parts.likeness", "card", CARDS, (), 1, draws=False),
        Row("thumbnails", "photos of 12 MP", "parts.shrinking", "card", 12, (), 1, draws=False),
    ]


def all_rows() -> list[Row]:
    """Give every row, in the order of running."""
    return [*_ours(), *_rivals("card", CARDS), *_rivals("label", LABELS), *_others()]
