"""Every line of text is on the face, inside its rectangle, and nothing else is.

Each line of glyphs is compared with what a separate HarfBuzz makes of the text: piece after piece
where it runs one way, else word by word (`words`).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache

from service.geometry import Rect
from service.render.proof.places import at
from service.render.proof.text.fonts import PlateFonts
from service.render.proof.text.lines import SIDEWAYS_MM, Bands, InkedLine, Line
from service.render.proof.text.spelling import plain
from service.render.proof.text.words import APART_RATIO, word_faults
from service.render.reading.glyphs import Piece, RunReader, SetRun
from service.render.reading.shaping import ShapedLine, Shaper

_KEPT_LINES = 4096
_OVERPRINT_RATIO = 0.3
"""Two lines whose ink shares more than this of the lower one's height are printed over; ours."""
_SIZE_MM = 0.005
"""Type sizes are written with three decimals of a point."""


class LineReader:
    """Compares lines of glyphs with their text, and remembers those compared last."""

    def __init__(self, runs: RunReader, shaper: Shaper) -> None:
        """Compare by this shaper."""
        self._runs = runs
        self._shaper = shaper
        self.faults = lru_cache(_KEPT_LINES)(self._faults)

    def _faults(self, text: str, language: str, operators: bytes) -> tuple[str, ...]:
        """Say why these operators do not show this text; nothing when they do."""
        run = self._runs.read(operators)
        return tuple(self._reasons(text, language, run))

    def _reasons(self, text: str, language: str, run: SetRun) -> Iterator[str]:
        if run.unread:
            yield f"{run.unread!r} cannot be read"
        elif not self._is_whole(text, language, run):
            yield from word_faults(text, run.glyphs, self._shaper, language=language)
        if run.said is not None and plain(run.said) != plain(text):
            yield f"it is said to be {run.said!r}"

    def _is_whole(self, text: str, language: str, run: SetRun) -> bool:
        """Tell whether the pieces, one after another, are what the shaper makes of the line."""
        rest, ends_mm = text, 0.0
        for piece in run.pieces:
            if piece.rise_mm or abs(piece.starts_mm[0] - ends_mm) > APART_RATIO * piece.size_mm:
                return False
            count = self._letters(piece, rest, language)
            if not count:
                return False
            rest = rest[count:]
            last = self._shaper.advances(piece.font)[piece.numbers[-1]]
            ends_mm = piece.starts_mm[-1] + last * piece.size_mm
        return not rest

    def _letters(self, piece: Piece, text: str, language: str) -> int:
        """Count the letters at the beginning of a text that a piece shows; 0 when it shows none."""
        for count in (len(piece.numbers), len(text)):
            wanted = self._shaper.shape_line(piece.font, text[:count], language=language)
            if _is_same(piece, wanted):
                return min(count, len(text))
        return 0


def _is_same(piece: Piece, wanted: ShapedLine) -> bool:
    if piece.numbers != wanted.numbers or not wanted.is_level or 0 in piece.numbers:
        return False
    size_mm, allowed_mm = piece.size_mm, APART_RATIO * piece.size_mm
    shift_mm = piece.starts_mm[0] - wanted.starts_ratio[0] * size_mm
    return all(
        abs(start_mm - start_ratio * size_mm - shift_mm) <= allowed_mm
        for start_mm, start_ratio in zip(piece.starts_mm, wanted.starts_ratio, strict=True)
    )


class TextProof:
    """The lines of one face against those of its plate."""

    def __init__(
        self,
        lines: Sequence[Line],
        inked: Sequence[InkedLine],
        fonts: PlateFonts,
    ) -> None:
        """Take what is asked for and what is shown; `fonts` say what a glyph stands for."""
        self._lines = lines
        self._inked = inked
        self._fonts = fonts
        self.owners: list[Line | None] = [None] * len(inked)
        """Which line each line of glyphs was found to be, once `faults` has been asked."""

    def faults(self, reader: LineReader) -> Iterator[str]:
        """Say what is missing, stands outside, is printed over, or was never asked for."""
        bands = Bands(self._inked)
        missing = [line for line in self._lines if not self._find(line, bands, reader)]
        for line in missing:
            yield self._missing(line, bands, reader)
        for owner, inked in zip(self.owners, self._inked, strict=True):
            if owner is not None:
                yield from _place_faults(owner, inked)
        yield from self._strays()
        yield from self._overprints()

    def _find(self, line: Line, bands: Bands, reader: LineReader) -> bool:
        """Take the first free line of glyphs in the band that shows this text."""
        for index in bands.within(line.rect):
            operators = self._inked[index].operators
            if self.owners[index] is None and not reader.faults(
                line.text, line.block.language, operators
            ):
                self.owners[index] = line
                return True
        return False

    def _missing(self, line: Line, bands: Bands, reader: LineReader) -> str:
        free = [index for index in bands.within(line.rect) if self.owners[index] is None]
        reasons = ["nothing is set there"]
        for index in reversed(free):
            self.owners[index] = line
            operators = self._inked[index].operators
            reasons = list(reader.faults(line.text, line.block.language, operators))
        read = " ".join(self._inked[index].spelled(self._fonts.texts) for index in free)
        return f"{_name(line)} is not printed there: {'; '.join(reasons)} (read back: {read!r})"

    def _strays(self) -> Iterator[str]:
        strays = [
            inked
            for line, inked in zip(self.owners, self._inked, strict=True)
            if line is None and inked.ink is not None
        ]
        if strays:
            text = "".join(inked.spelled(self._fonts.texts) for inked in strays)
            place = strays[0].ink or Rect(strays[0].x_mm, strays[0].y_mm, 0.0, 0.0)
            yield f"{text[:60]!r} is printed where no block asks for it, {at(place)}"

    def _overprints(self) -> Iterator[str]:
        """Compare each line with those that begin, from the top, before it ends."""
        inks = [
            (ink, line)
            for line, inked in zip(self.owners, self._inked, strict=True)
            if line is not None and (ink := inked.ink) is not None
        ]
        inks.sort(key=lambda one: one[0].y_mm)
        for number, (ink, line) in enumerate(inks):
            bottom_mm = ink.bottom_mm
            for other_ink, other in inks[number + 1 :]:
                if other_ink.y_mm >= bottom_mm:
                    break
                if other.block is not line.block and _is_over(ink, other_ink):
                    yield f"{line.text!r} and {other.text!r} are printed over each other, {at(ink)}"


def _place_faults(line: Line, inked: InkedLine) -> Iterator[str]:
    ink = inked.ink
    if ink is not None and not line.holds(ink):
        yield f"{_name(line)} reaches out of its place: its ink lies {at(ink)}"
    em_mm = line.em_mm
    if any(abs(piece.size_mm - em_mm) > _SIZE_MM for piece in inked.run.pieces):
        yield f"{_name(line)} is set in another size"


def _name(line: Line) -> str:
    return f"the {line.block.purpose} {line.text!r} {at(line.rect)}"


def _is_over(ink: Rect, other: Rect) -> bool:
    if not ink.overlaps(other, tolerance_mm=SIDEWAYS_MM):
        return False
    shared_mm = min(ink.bottom_mm, other.bottom_mm) - max(ink.y_mm, other.y_mm)
    return shared_mm > _OVERPRINT_RATIO * min(ink.height_mm, other.height_mm)
