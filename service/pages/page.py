"""A page: one face of a card at finished size, every block placed in mm.

Text comes as lines, already broken by the ruler, so that whoever draws it has no choice left.
Rectangles are measured from the page's top left corner. The order of blocks is the order of
reading.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from service.geometry import Rect, Size
from service.symbols.symbol import Symbol
from service.units import mm_from_points


class Align(StrEnum):
    """How lines stand in their block; start is left, or right in a right-to-left text."""

    START = "start"
    CENTRE = "centre"
    END = "end"


class Direction(StrEnum):
    """The base direction of a text, taken from its own letters and never from its neighbours'."""

    LEFT_TO_RIGHT = "ltr"
    RIGHT_TO_LEFT = "rtl"


class Shade(StrEnum):
    """The few tones a card uses; all survive a black-only printer."""

    BLACK = "black"
    GREY = "grey"
    PALE = "pale"
    WHITE = "white"


@dataclass(frozen=True, slots=True)
class TextStyle:
    """How a text is set: `weight` as in CSS, `leading_ratio` is line pitch over type size.

    `language` is that of the whole text, so that a piece of it is measured in the same face; ""
    leaves it to the letters of what is measured.
    """

    size_pt: float
    weight: int = 400
    leading_ratio: float = 1.25
    align: Align = Align.START
    shade: Shade = Shade.BLACK
    language: str = ""

    @property
    def leading_mm(self) -> float:
        """The distance from one line to the next."""
        return mm_from_points(self.size_pt * self.leading_ratio)


@dataclass(frozen=True, slots=True)
class TextBlock:
    """Lines of one text; the rectangle is as wide as the space it has and as high as its lines.

    `whole` is the text before it was broken or shortened. `purpose` names what it says
    ("container number", "caption"), for the template, the proof and the person who reads either.
    """

    purpose: str
    rect: Rect
    lines: tuple[str, ...]
    style: TextStyle
    whole: str
    direction: Direction = Direction.LEFT_TO_RIGHT
    language: str = ""

    @property
    def is_shortened(self) -> bool:
        """Whether an ellipsis stands for the end of the text."""
        return bool(self.lines) and self.lines[-1].endswith("…") and not self.whole.endswith("…")


@dataclass(frozen=True, slots=True)
class PictureBlock:
    """A photo in its frame, never stretched; `photo` is the file name the record gives.

    `rect` is the space the picture may fill; it stands in it as `across` and `down` say. An empty
    `photo` draws the frame alone; the words why stand in a text of their own.
    """

    purpose: str
    rect: Rect
    photo: str
    alt: str
    across: Align = Align.CENTRE
    down: Align = Align.CENTRE


@dataclass(frozen=True, slots=True)
class SymbolBlock:
    """A QR symbol; the rectangle includes its clear margin."""

    purpose: str
    rect: Rect
    symbol: Symbol
    module_mm: float
    quiet_zone_modules: int
    alt: str


@dataclass(frozen=True, slots=True)
class MarkBlock:
    """A pictogram, whose words stand beside it on the page or in the strip."""

    purpose: str
    rect: Rect
    mark: str
    alt: str


@dataclass(frozen=True, slots=True)
class ShapeBlock:
    """A filled or outlined rectangle, such as a rule, a frame or the panel behind a place."""

    purpose: str
    rect: Rect
    fill: Shade | None = None
    outline_mm: float = 0.0
    dashed: bool = False
    radius_mm: float = 0.0


Block = TextBlock | PictureBlock | SymbolBlock | MarkBlock | ShapeBlock


@dataclass(frozen=True, slots=True)
class Page:
    """One face at finished size: `number` of `of` pages of the same card."""

    kind: str
    container_number: str
    title: str
    number: int
    of: int
    size: Size
    blocks: tuple[Block, ...]
