"""Fonts as a file carries them, and those we ship.

A font is known by its name: family and weight as Pango writes them, without the prefix of the
subset.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterable, Iterator, Mapping
from functools import cached_property, lru_cache
from pathlib import Path

import pikepdf
from pikepdf import Name

_CODE_ENTRY = re.compile(rb"<([0-9a-fA-F]{4})>\s+([0-9]+)")
_WEIGHT_NAMES = {
    100: "Thin",
    200: "Ultra-Light",
    300: "Light",
    400: "",
    500: "Medium",
    600: "Semi-Bold",
    700: "Bold",
    800: "Ultra-Bold",
    900: "Heavy",
}


@lru_cache(maxsize=4)
def shipped_fonts(folder: Path) -> Mapping[str, Path]:
    """Give the files of `fonts.toml` by the name a PDF calls them, in the order of fallback."""
    table = tomllib.loads((folder / "fonts.toml").read_text(encoding="utf-8"))
    return {
        _font_name(family["name"], face["weight"]): folder / face["file"]
        for family in table["family"]
        for face in family["face"]
    }


def _font_name(family: str, weight: int) -> str:
    words = [family.replace(" ", "-"), _WEIGHT_NAMES[weight]]
    return "-".join(filter(None, words))


def font_faults(pages: Iterable[pikepdf.Page], shipped: Mapping[str, Path]) -> Iterator[str]:
    """Say which fonts are not ours, or do not travel with the file; each once."""
    told: set[str] = set()
    for number, page in enumerate(pages, start=1):
        for font in fonts_of(page.obj.get(Name.Resources)).values():
            if font.name not in told:
                told.add(font.name)
                yield from (f"page {number}: {fault}" for fault in _faults_of(font, shipped))


def _faults_of(font: FontInFile, shipped: Mapping[str, Path]) -> Iterator[str]:
    if font.name not in shipped:
        yield f"the font {font.name} is none of those shipped"
    if not font.is_embedded:
        yield f"the font {font.name} is not embedded"
    if not font.is_by_glyph:
        yield f"the font {font.name} is not written by glyph numbers"


class FontInFile:
    """A composite font of the file: its name, whether it is embedded, and its widths."""

    def __init__(self, entry: pikepdf.Object) -> None:
        """Wrap the entry of a resource dictionary."""
        self._entry = entry

    @cached_property
    def name(self) -> str:
        """The name without the prefix of its subset."""
        name = str(self._entry.get(Name.BaseFont, "/unnamed")).lstrip("/").rpartition("+")[2]
        # Pango ends a family whose last word is a number with a comma.
        return name.rstrip(",")

    @property
    def is_by_glyph(self) -> bool:
        """Whether its codes of two bytes lead to the numbers of the font's own glyphs."""
        identity = Name("/Identity")
        encoding = self._entry.get(Name.Encoding)
        return bool(
            (encoding == Name("/Identity-H") or isinstance(encoding, pikepdf.Stream))
            and self._descendant is not None
            and self._descendant.get(Name.CIDToGIDMap, identity) == identity
        )

    def glyph(self, code: int) -> int:
        """Give the glyph a code stands for; 0 where the font's table of codes leaves it out."""
        return code if self._codes is None else self._codes.get(code, 0)

    @property
    def is_embedded(self) -> bool:
        """Whether the outlines travel with the file."""
        font = self._entry if self._descendant is None else self._descendant
        described = font.get(Name.FontDescriptor)
        return described is not None and any(
            key in described for key in (Name.FontFile2, Name.FontFile3)
        )

    @cached_property
    def widths(self) -> dict[int, float]:
        """Advance widths by glyph, in thousandths of the em; those left out are 1000."""
        found: dict[int, float] = {}
        if self._descendant is None or Name.W not in self._descendant:
            return found
        entries = iter(self._descendant.W.as_list())
        for first in entries:
            second = next(entries)
            if isinstance(second, pikepdf.Array):
                found |= {int(first) + step: float(width) for step, width in enumerate(second)}
            else:
                width = float(next(entries))
                found |= dict.fromkeys(range(int(first), int(second) + 1), width)
        return found

    @cached_property
    def _codes(self) -> dict[int, int] | None:
        """Read the font's own table of codes, None where a code is the glyph itself.

        The engine writes a table where one glyph stands for several characters or where a
        character has no glyph.
        """
        encoding = self._entry.get(Name.Encoding)
        if not isinstance(encoding, pikepdf.Stream):
            return None
        entries = _CODE_ENTRY.findall(encoding.read_bytes())
        return {int(code, 16): int(glyph) for code, glyph in entries}

    @cached_property
    def _descendant(self) -> pikepdf.Object | None:
        descendants = self._entry.get(Name.DescendantFonts)
        return None if descendants is None else descendants[0]


def fonts_of(resources: pikepdf.Object | None) -> dict[str, FontInFile]:
    """Give the fonts of a resource dictionary by the names the content uses."""
    if resources is None or Name.Font not in resources:
        return {}
    return {name: FontInFile(entry) for name, entry in resources.Font.as_dict().items()}
