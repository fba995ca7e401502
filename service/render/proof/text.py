"""Every line of text is on the face, inside its rectangle, and nothing else is.

Text is read back by PDFium and compared sign by sign, with blanks run together. Lines that are
shaped, and lines whose signs come back under another name, are proved by their glyphs instead
(`words`).
"""

from __future__ import annotations

import unicodedata
from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from service.geometry import Rect
from service.pages.page import TextBlock
from service.render.proof.places import around, at
from service.render.proof.words import word_faults
from service.render.reading.face import Character
from service.render.reading.glyphs import Glyph
from service.render.reading.shaping import Shaper
from service.units import mm_from_points

_SIDEWAYS_MM = 0.3
"""How far ink may stand out of its rectangle sideways: overhanging letters; ours."""
_UPWARDS_RATIO = 0.4
"""How far, in ems, up and down: stacked marks and deep letters; ours."""
_OVERPRINT_RATIO = 0.3
"""Two lines whose ink shares more than this of the lower one's height are printed over; ours."""

_SHAPED_CLASSES = frozenset({"R", "AL", "AN"})
_MARKS = frozenset({"Mn", "Mc", "Me"})
# Scripts of India and South East Asia (Unicode Standard, code charts).
_SHAPED_RANGES = ((0x0900, 0x109F), (0x1780, 0x17FF), (0x1A00, 0x1AFF))
# PDFium gives a hyphen at the end of a line as the control character 2.
_SAME = str.maketrans(
    {"\u2010": "-", "\u2011": "-", "\x02": "-"} | {"ﬀ": "ff", "ﬁ": "fi", "ﬂ": "fl"}
)


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a block, and the band of the face it stands in."""

    block: TextBlock
    text: str
    rect: Rect

    @property
    def em_mm(self) -> float:
        """The type size."""
        return mm_from_points(self.block.style.size_pt)

    @property
    def reach(self) -> Rect:
        """How far its ink may go."""
        return around(self.rect, x_mm=_SIDEWAYS_MM, y_mm=_UPWARDS_RATIO * self.em_mm)

    def holds(self, x_mm: float, y_mm: float) -> bool:
        """Tell whether a glyph with this origin stands in the band."""
        slack_mm = _SIDEWAYS_MM
        return (
            self.rect.x_mm - slack_mm <= x_mm <= self.rect.right_mm + slack_mm
            and self.rect.y_mm <= y_mm < self.rect.bottom_mm
        )


def lines_of(blocks: Sequence[TextBlock]) -> tuple[Line, ...]:
    """Give the lines of blocks, each one line pitch high; a line without signs is left out."""
    return tuple(
        Line(block, text, Rect(rect.x_mm, rect.y_mm + number * pitch_mm, rect.width_mm, pitch_mm))
        for block in blocks
        for rect, pitch_mm in [(block.rect, block.style.leading_mm)]
        for number, text in enumerate(block.lines)
        if text.strip()
    )


class TextProof:
    """The text of one face against what was read from it."""

    def __init__(
        self, lines: Sequence[Line], characters: Sequence[Character], glyphs: Sequence[Glyph]
    ) -> None:
        """Sort what was read into the bands of the lines."""
        self._lines = lines
        self._glyphs = glyphs
        self._characters = characters
        self._claimed = [False] * len(characters)
        # By height, so that a line looks at its own band alone.
        self._order = sorted(range(len(characters)), key=self._height_of)
        self._heights_mm = [self._height_of(index) for index in self._order]

    def _height_of(self, index: int) -> float:
        return self._characters[index].origin.y_mm

    def faults(self, shaper: Shaper) -> Iterator[str]:
        """Say what is missing, stands outside, is printed over, or was never asked for."""
        inks = []
        for line in self._lines:
            found = self._in_band(line)
            mine = () if is_shaped(line.text) else self._spell(line, found)
            yield from self._line_faults(line, mine, found, shaper)
            inks.append((line, self._ink_of(mine or found)))
        yield from _overprints(inks)
        yield from self._strays()

    def _in_band(self, line: Line) -> list[int]:
        """Give the characters in the band of a line, in the order of drawing."""
        first = bisect_left(self._heights_mm, line.rect.y_mm)
        last = bisect_left(self._heights_mm, line.rect.bottom_mm)
        return sorted(
            index
            for index in self._order[first:last]
            if line.holds(self._characters[index].origin.x_mm, self._height_of(index))
        )

    def _line_faults(
        self, line: Line, mine: Sequence[int], found: Sequence[int], shaper: Shaper
    ) -> Iterator[str]:
        """Judge a line by the characters that spell it, else by the glyphs of its band."""
        here = f"the {line.block.purpose} {line.text!r} {at(line.rect)}"
        self._claim(mine or found)
        if not mine:
            glyphs = [g for g in self._glyphs if line.holds(g.origin.x_mm, g.origin.y_mm)]
            language = line.block.language
            reasons = list(word_faults(line.text, glyphs, shaper, language=language))
            if reasons:
                read = "".join(self._characters[index].text for index in found)
                yield f"{here} is not printed there: {'; '.join(reasons)} (read back: {read!r})"
        ink = self._ink_of(mine or found)
        if ink and not line.reach.holds(ink):
            yield f"{here} reaches out of its place: its ink lies {at(ink)}"

    def _ink_of(self, indices: Sequence[int]) -> Rect | None:
        return _ink_of([self._characters[index] for index in indices])

    def _spell(self, line: Line, found: Sequence[int]) -> Sequence[int]:
        """Give the characters in a row that spell a line; none when they do not."""
        wanted = plain(line.text)
        read = [plain(self._characters[index].text, keep_ends=True) for index in found]
        whole = "".join(read)
        if plain(whole) == wanted:
            return found
        # Two blocks may share a band; then the line stands in a row within it.
        start = whole.find(wanted)
        if start < 0:
            return ()
        ends = [sum(map(len, read[: number + 1])) for number in range(len(read))]
        return [
            index
            for index, end in zip(found, ends, strict=True)
            if start < end <= start + len(wanted)
        ]

    def _claim(self, indices: Sequence[int]) -> None:
        for index in indices:
            self._claimed[index] = True

    def _strays(self) -> Iterator[str]:
        strays = [
            character
            for character, claimed in zip(self._characters, self._claimed, strict=True)
            if not claimed and plain(character.text)
        ]
        if strays:
            text = "".join(character.text for character in strays)
            ink = _ink_of(strays) or strays[0].ink
            yield f"{text[:60]!r} is printed where no block asks for it, {at(ink)}"


def is_shaped(text: str) -> bool:
    """Tell whether a text joins letters, stacks marks or runs from the right."""
    return any(
        unicodedata.bidirectional(character) in _SHAPED_CLASSES
        or unicodedata.category(character) in _MARKS
        or any(first <= ord(character) <= last for first, last in _SHAPED_RANGES)
        for character in unicodedata.normalize("NFC", text)
    )


def plain(text: str, *, keep_ends: bool = False) -> str:
    """Bring a text to one spelling: decomposed, blanks run together, nothing invisible."""
    spelled = unicodedata.normalize("NFD", text.translate(_SAME))
    shown = "".join(
        " " if character.isspace() else character
        for character in spelled
        if unicodedata.category(character) not in {"Cf", "Cc"} or character.isspace()
    )
    return shown if keep_ends else " ".join(shown.split())


def _ink_of(characters: Sequence[Character]) -> Rect | None:
    inks = [one.ink for one in characters if one.ink.width_mm > 0 and one.ink.height_mm > 0]
    if not inks:
        return None
    left, top = min(ink.x_mm for ink in inks), min(ink.y_mm for ink in inks)
    right, bottom = max(ink.right_mm for ink in inks), max(ink.bottom_mm for ink in inks)
    return Rect(left, top, right - left, bottom - top)


def _overprints(inks: Sequence[tuple[Line, Rect | None]]) -> Iterator[str]:
    known = [(line, ink) for line, ink in inks if ink is not None]
    for (line, ink), (other, other_ink) in combinations(known, 2):
        if line.block is not other.block and ink.overlaps(other_ink, tolerance_mm=_SIDEWAYS_MM):
            shared_mm = min(ink.bottom_mm, other_ink.bottom_mm) - max(ink.y_mm, other_ink.y_mm)
            if shared_mm > _OVERPRINT_RATIO * min(ink.height_mm, other_ink.height_mm):
                yield f"{line.text!r} and {other.text!r} are printed over each other, {at(ink)}"
