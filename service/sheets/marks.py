"""Hairlines that say where to cut cards apart."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from service.geometry import Point, Rect

MARK_LENGTH_MM = 3.0
MARK_GAP_MM = 1.0
MARK_WIDTH_MM = 0.1
"""Length, distance from the corner, and thickness of a mark: common practice, no source."""

# Fine enough for print, coarse enough that cards which touch give one mark and not two.
_DECIMALS = 6


@dataclass(frozen=True, slots=True)
class CutMark:
    """A level or upright hairline, from left to right or from the top down."""

    start: Point
    end: Point

    @property
    def bounds(self) -> Rect:
        """The line as a rectangle without thickness."""
        return Rect(
            self.start.x_mm,
            self.start.y_mm,
            self.end.x_mm - self.start.x_mm,
            self.end.y_mm - self.start.y_mm,
        )


@dataclass(frozen=True, slots=True)
class _EdgeEnd:
    """Where an edge of a card ends, and the way it would go on: -1, 0 or 1 right and down."""

    corner: Point
    right: int
    down: int

    def mark(self, from_mm: float, to_mm: float) -> CutMark:
        """Give the line between two distances beyond the corner; negative ones lie on the edge."""
        near, far = sorted((from_mm * (self.right + self.down), to_mm * (self.right + self.down)))
        along_x, along_y = abs(self.right), abs(self.down)
        x_mm, y_mm = self.corner.x_mm, self.corner.y_mm
        return CutMark(
            Point(round(x_mm + near * along_x, _DECIMALS), round(y_mm + near * along_y, _DECIMALS)),
            Point(round(x_mm + far * along_x, _DECIMALS), round(y_mm + far * along_y, _DECIMALS)),
        )


def cut_marks(cards: Sequence[Rect], *, printable: Rect) -> tuple[CutMark, ...]:
    """Mark every cut once, in the waste beyond the cards.

    A mark goes on from the edge it prolongs, `MARK_GAP_MM` away from the corner. Where the next
    card is in its way there is none: the line is marked at its outer ends. Where the page ends
    instead, the mark lies on the edge itself, as far out as the printer reaches, so that the knife
    takes it away; an edge beyond the printer's reach needs no cut.
    """
    found: set[CutMark] = set()
    for card in cards:
        for end in _edge_ends(card):
            beyond = end.mark(MARK_GAP_MM, MARK_GAP_MM + MARK_LENGTH_MM)
            if not printable.holds(beyond.bounds):
                found.update(_on_edge(card, end, printable))
            elif not any(_touch(beyond.bounds, other) for other in cards):
                found.add(beyond)
    return tuple(sorted(found, key=_reading_order))


def _reading_order(mark: CutMark) -> tuple[float, float, float]:
    return (mark.start.y_mm, mark.start.x_mm, mark.end.x_mm)


def _edge_ends(card: Rect) -> Iterator[_EdgeEnd]:
    for x_mm, right in ((card.x_mm, -1), (card.right_mm, 1)):
        for y_mm, down in ((card.y_mm, -1), (card.bottom_mm, 1)):
            yield _EdgeEnd(Point(x_mm, y_mm), right, 0)
            yield _EdgeEnd(Point(x_mm, y_mm), 0, down)


def _on_edge(card: Rect, end: _EdgeEnd, printable: Rect) -> Iterator[CutMark]:
    """Give the mark on the edge itself, none where the edge is too short or out of reach."""
    inwards_mm = _outside_mm(end, printable)
    mark = end.mark(-inwards_mm - MARK_LENGTH_MM, -inwards_mm)
    if printable.holds(mark.bounds) and card.holds(mark.bounds):
        yield mark


def _outside_mm(end: _EdgeEnd, printable: Rect) -> float:
    """Tell how far a corner lies outside the printable area, the way its edge goes."""
    beyond_mm = {
        (-1, 0): printable.x_mm - end.corner.x_mm,
        (1, 0): end.corner.x_mm - printable.right_mm,
        (0, -1): printable.y_mm - end.corner.y_mm,
        (0, 1): end.corner.y_mm - printable.bottom_mm,
    }
    return max(0.0, beyond_mm[end.right, end.down])


def _touch(one: Rect, other: Rect) -> bool:
    # A mark along another card's edge counts as touching, so the tolerance widens here.
    return one.overlaps(other, tolerance_mm=-1e-3)
