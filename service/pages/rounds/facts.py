"""Sets facts one below the other: a small label, then its value or a line to write on."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from service.geometry import Rect
from service.pages.look import HAIRLINE_MM
from service.pages.page import Block, Shade, ShapeBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.stack import bottom_of
from service.pages.setting.text import Spot, set_text
from service.pages.setting.type import caps_mm

_LINE_RAISED_MM = 0.6
"""How far a line to write on stands above the bottom of its row."""


@dataclass(frozen=True, slots=True)
class Fact:
    """A label and its value, shortened to so many lines (0: never); "" leaves a line for a pen."""

    label: str
    value: str
    max_lines: int = 0


@dataclass(frozen=True, slots=True)
class FactLook:
    """How facts are set: types, room for labels, height of a row to write in, and between rows."""

    label: TextStyle
    value: TextStyle
    label_mm: float
    pen_mm: float
    gap_mm: float


def set_facts(ruler: Ruler, facts: Iterable[Fact], look: FactLook, area: Rect) -> list[Block]:
    """Set facts from the top of an area; it grows downwards as it must."""
    blocks: list[Block] = []
    y_mm = area.y_mm
    for fact in facts:
        row = _set_fact(ruler, fact, look, Rect(area.x_mm, y_mm, area.width_mm, 0))
        blocks += row
        y_mm = bottom_of(row) + look.gap_mm
    return blocks


def _set_fact(ruler: Ruler, fact: Fact, look: FactLook, area: Rect) -> tuple[Block, ...]:
    x_mm, width_mm = area.x_mm + look.label_mm, area.width_mm - look.label_mm
    line_mm = look.pen_mm - _LINE_RAISED_MM
    down_mm = (_baseline_mm(look.value) if fact.value else line_mm) - _baseline_mm(look.label)
    spot = Spot(area.x_mm, area.y_mm + down_mm, look.label_mm)
    name = set_text(ruler, fact.label, look.label, spot, "label")
    if fact.value:
        beside = Spot(x_mm, area.y_mm, width_mm, fact.max_lines)
        return (name, set_text(ruler, fact.value, look.value, beside, "fact"))
    line = Rect(x_mm, area.y_mm + line_mm, width_mm, HAIRLINE_MM)
    return (name, ShapeBlock("line", line, Shade.BLACK))


def _baseline_mm(style: TextStyle) -> float:
    """Give how far below its top the baseline of a first line stands."""
    return (style.leading_mm + caps_mm(style.size_pt)) / 2
