"""Fits the specimen of marks: families under headings, two abreast, and what marks are not."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from service.cards.words import count, join_words
from service.errors import DoesNotFitError
from service.geometry import Rect, Size
from service.legibility import sign_distance_mm
from service.pages.look import HAIRLINE_MM, RULE_MM, inner_rect
from service.pages.page import Align, Block, Page, Shade, ShapeBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.stack import bottom_of, move_blocks
from service.pages.setting.text import Spot, set_text
from service.pages.setting.type import CAPTION_PT
from service.pages.specimen.cell import SIZES_MM, set_cell
from service.printed import to_print
from service.symbols.pictograms import Family, Pictogram

KIND = "mark-specimen"

_MARGIN_MM = 12.0
_COLUMN_GAP_MM = 6.0
_ROW_GAP_MM = 3.0
_TRIANGLE_RATIO = 0.854
"""Height of the triangle over the width of its drawing: of all forms it carries least far."""

_TITLE = TextStyle(20.0, weight=800, leading_ratio=1.1)
_HEADING = TextStyle(12.0, weight=700, leading_ratio=1.2)
_BODY = TextStyle(max(CAPTION_PT, 9.0), leading_ratio=1.28)

_HEADINGS = {
    Family.WARNING: to_print("Warning: what can hurt people"),
    Family.PROHIBITION: to_print("Prohibition: what not to do"),
    Family.MANDATORY: to_print("Mandatory: what to do or wear first"),
    Family.HANDLING: to_print("Handling: what the contents need"),
    Family.PANEL: to_print("Panels: what is to be asked"),
    Family.CHEMICAL: to_print("Chemical: only for chemicals in their original containers"),
}
_NOTES = (
    (
        to_print(
            "These are caution marks of our own, in the geometry of published families. None is a"
            " conforming sign, and none is a label for chemicals that are supplied. Local rules and"
            " the people who answer for them come first."
        )
    ),
    (
        to_print(
            "A mark is printed with its words, at least 8 mm wide. Draft: staff of a store have not"
            " read it yet at that size without its words."
        )
    ),
)


@dataclass(frozen=True, slots=True)
class _Row:
    """Marks abreast, set from the corner (0, 0); `begins` says that they are a family's first."""

    family: Family
    begins: bool
    blocks: tuple[Block, ...]

    @property
    def height_mm(self) -> float:
        return bottom_of(self.blocks) + _ROW_GAP_MM


def fit_specimen(pictograms: Sequence[Pictogram], size: Size, ruler: Ruler) -> tuple[Page, ...]:
    """Lay the marks out in their order; no row is divided, and each page names its families.

    Raises:
        DoesNotFitError: When one row is higher than a page.
    """
    inside = inner_rect(size, _MARGIN_MM)
    foot = _set_foot(ruler, inside)
    top_mm = bottom_of(_set_head(ruler, pictograms, inside, (88, 88))) + 3.0
    room_mm = min(block.rect.y_mm for block in foot) - top_mm
    shared = _share(ruler, _set_rows(ruler, pictograms, inside), Size(inside.width_mm, room_mm))
    pages = []
    for number, rows in enumerate(shared, start=1):
        blocks = list(_set_head(ruler, pictograms, inside, (number, len(shared))))
        y_mm = top_mm
        for row in rows:
            blocks += move_blocks(row.blocks, inside.x_mm, y_mm)
            y_mm += row.height_mm
        page_blocks = (*blocks, *foot)
        pages.append(Page(KIND, "marks", to_print("Marks"), number, len(shared), size, page_blocks))
    return tuple(pages)


def _set_rows(ruler: Ruler, pictograms: Sequence[Pictogram], inside: Rect) -> Iterator[_Row]:
    """Set two marks abreast, each family from a row of its own."""
    width_mm = (inside.width_mm - _COLUMN_GAP_MM) / 2
    for family, some in groupby(pictograms, key=lambda pictogram: pictogram.family):
        cells = [set_cell(ruler, pictogram, width_mm=width_mm) for pictogram in some]
        for first in range(0, len(cells), 2):
            blocks: list[Block] = []
            for column, cell in enumerate(cells[first : first + 2]):
                blocks += move_blocks(cell, column * (width_mm + _COLUMN_GAP_MM), 0)
            yield _Row(family, first == 0, tuple(blocks))


def _under_heading(ruler: Ruler, row: _Row, width_mm: float) -> _Row:
    words = _HEADINGS[row.family] + ("" if row.begins else to_print(" (continued)"))
    heading = set_text(ruler, words, _HEADING, Spot(0, 0, width_mm), "family")
    rule = Rect(0, heading.rect.bottom_mm + 0.6, width_mm, HAIRLINE_MM)
    below = move_blocks(row.blocks, 0, rule.bottom_mm + 2.6)
    blocks = (heading, ShapeBlock("family-rule", rule, Shade.BLACK), *below)
    return replace(row, blocks=blocks)


def _share(ruler: Ruler, rows: Iterator[_Row], room: Size) -> list[list[_Row]]:
    """Fill page after page; a family is named where it begins and at the top of a page.

    Raises:
        DoesNotFitError: When one row is higher than a page.
    """
    pages: list[list[_Row]] = []
    left_mm = 0.0
    for row in rows:
        headed = _under_heading(ruler, row, room.width_mm)
        if headed.height_mm > room.height_mm:
            message = "row"
            raise DoesNotFitError(message, needed_mm=headed.height_mm, available_mm=room.height_mm)
        placed = headed if row.begins else row
        if placed.height_mm > left_mm:
            placed = headed
            pages.append([])
            left_mm = room.height_mm
        pages[-1].append(placed)
        left_mm -= placed.height_mm
    return pages


def _set_head(
    ruler: Ruler, pictograms: Sequence[Pictogram], inside: Rect, numbering: tuple[int, int]
) -> tuple[Block, ...]:
    number, of = numbering
    half_mm = inside.width_mm / 2
    title = set_text(
        ruler, to_print("Marks"), _TITLE, Spot(inside.x_mm, inside.y_mm, half_mm), "heading"
    )
    end = TextStyle(_BODY.size_pt, leading_ratio=1.28, align=Align.END)
    said = join_words(
        (count(len(pictograms), "mark"), to_print("page {number} of {of}", number=number, of=of))
    )
    spot = Spot(inside.x_mm + half_mm, inside.y_mm + 2.6, half_mm)
    page = set_text(ruler, said, end, spot, "page")
    below = Spot(inside.x_mm, title.rect.bottom_mm + 0.6, inside.width_mm)
    sizes = set_text(ruler, _say_sizes(), _BODY, below, "sizes")
    rule = Rect(inside.x_mm, sizes.rect.bottom_mm + 1.2, inside.width_mm, RULE_MM)
    return (title, page, sizes, ShapeBlock("rule", rule, Shade.BLACK))


def _say_sizes() -> str:
    """Say how large the marks are drawn and how far each carries, rounded down to 0.1 m."""
    sizes = to_print(" and ").join(
        (", ".join(f"{size:.0f}" for size in SIZES_MM[:-1]), f"{SIZES_MM[-1]:.0f}")
    )
    tenths = [int(sign_distance_mm(size * _TRIANGLE_RATIO) // 100) / 10 for size in SIZES_MM]
    metres = to_print(" and ").join(
        (", ".join(f"{metre:.1f}" for metre in tenths[:-1]), f"{tenths[-1]:.1f}")
    )
    return to_print(
        "Each is drawn {sizes} mm wide. In good light a triangle carries about {metres} m.",
        sizes=sizes,
        metres=metres,
    )


def _set_foot(ruler: Ruler, inside: Rect) -> tuple[Block, ...]:
    rule = ShapeBlock("rule", Rect(inside.x_mm, 0, inside.width_mm, HAIRLINE_MM), Shade.BLACK)
    blocks: list[Block] = [rule]
    for words in _NOTES:
        spot = Spot(inside.x_mm, bottom_of(blocks) + 0.8, inside.width_mm)
        blocks.append(set_text(ruler, words, _BODY, spot, "note"))
    return move_blocks(tuple(blocks), 0, inside.bottom_mm - bottom_of(blocks))
