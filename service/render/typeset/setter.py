"""Sets lines of text as glyphs, with the shaper and the fonts that measured them.

Every line is a paragraph of its own, in the base direction and the language given, as a template
of print sets it: `display: block; white-space: pre`, figures of one width.
"""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from service.render.pango import UNITS_PER_PIXEL, Paragraphs
from service.render.typeset.faces import Faces
from service.render.typeset.line import SetLine
from service.render.typeset.operators import say_instead, show_runs
from service.render.typeset.pairs import Pairs, advance_mm, put_together
from service.render.typeset.shaped import LineShaper
from service.render.typeset.texts import note_texts
from service.units import css_pixels_from_points, mm_from_css_pixels

_KEPT_LINES = 10_000
"""Set lines that are remembered, about 3 kB each: the words that come again from card to card."""
_KEPT_STRUTS = 1024
_BLANK = " "
_ANY_SIZE_PT = 12.0


class Typesetter:
    """Sets text as it will be printed. Not for use by two threads at once."""

    def __init__(self, fonts_conf: Path) -> None:
        """Load the fonts named in a fontconfig file; raises `OSError` when there are none."""
        self._shaper = LineShaper(fonts_conf)
        self._faces = Faces(fonts_conf, self._shaper)
        self._pairs: dict[int, Pairs] = {}
        self._set = lru_cache(_KEPT_LINES)(self._set_line)
        self._measured = lru_cache(_KEPT_STRUTS)(self._strut)

    @property
    def paragraphs(self) -> Paragraphs:
        """The same fonts and shaper, for a ruler to measure with."""
        return self._shaper

    def set_line(
        self, text: str, *, size_pt: float, weight: int, language: str, is_right_to_left: bool
    ) -> SetLine:
        """Set one line; `language` "" is English, and a character no font holds is glyph 0."""
        return self._set(text, size_pt, weight, language, is_right_to_left)

    def strut(self, *, size_pt: float, weight: int, language: str) -> tuple[float, float]:
        """Give the height of a line of the first face, and its baseline from the top, in mm."""
        return self._measured(size_pt, weight, language)

    def _set_line(
        self,
        text: str,
        size_pt: float,
        weight: int,
        language: str,
        is_right_to_left: bool,  # noqa: FBT001 - the key of the cache; its caller names it.
    ) -> SetLine:
        if not language and not is_right_to_left and text != _BLANK:
            plain = self._set_plain(text, size_pt, weight)
            if plain is not None:
                return plain
        raw = text.encode()
        shaper = self._shaper
        shaper.shape_line(
            raw,
            size_px=css_pixels_from_points(size_pt),
            weight=weight,
            language=language,
            is_right_to_left=is_right_to_left,
        )
        runs = [(self._faces.face(run.font), run) for run in shaper.runs()]
        operators = show_runs(runs, size_pt)
        glyphs: dict[int, dict[int, str]] = {}
        is_plain = True
        for face, run in runs:
            is_plain &= note_texts(face, run, raw, glyphs.setdefault(face.number, {}))
        if not is_plain:
            operators = say_instead(operators, text)
        width_mm, ascent_mm, descent_mm = map(_mm_from_units, shaper.extents())
        return SetLine(operators.encode("ascii"), width_mm, ascent_mm, descent_mm, glyphs)

    def _set_plain(self, text: str, size_pt: float, weight: int) -> SetLine | None:
        """Set a line of plain Latin text, None where it is no such line."""
        pairs = self._pairs.get(weight) or self._begin_pairs(weight)
        plain = put_together(text, pairs)
        if plain is None:
            return None
        height_mm, baseline_mm = self._measured(size_pt, weight, "")
        return SetLine(
            f"/F{pairs.face.number} {round(size_pt, 3):g} Tf [<{plain.array}>] TJ".encode("ascii"),
            advance_mm(plain.advance, size_pt),
            baseline_mm,
            height_mm - baseline_mm,
            {pairs.face.number: plain.glyphs},
        )

    def _begin_pairs(self, weight: int) -> Pairs:
        """Begin the pairs of the main face in a weight: the face of the blank."""
        (number,) = self._set(_BLANK, _ANY_SIZE_PT, weight, "", False).glyphs  # noqa: FBT003 - see above.
        pairs = self._pairs[weight] = Pairs(self._faces.numbered(number))
        return pairs

    def _strut(self, size_pt: float, weight: int, language: str) -> tuple[float, float]:
        line = self._set(_BLANK, size_pt, weight, language, False)  # noqa: FBT003 - as above.
        return line.ascent_mm + line.descent_mm, line.ascent_mm


def _mm_from_units(units: int) -> float:
    return mm_from_css_pixels(units / UNITS_PER_PIXEL)
