"""Fits a lid card: one card where the pictures stay large enough, else two, else names in lists.

Nothing is lost: every object of the packing stands on one of the pages.
"""

from __future__ import annotations

from collections.abc import Sequence

from service.cards.card import LidCard
from service.cards.parts import CardLayer
from service.errors import DoesNotFitError
from service.geometry import Rect, Size
from service.pages.lid.cells import SCALES, measure_captions
from service.pages.lid.contents_grid import Fit, set_grid
from service.pages.lid.grid import FLOOR_MM, GridPlan, GridSpace, capacity, plan_grid
from service.pages.lid.lists import fit_lists
from service.pages.lid.space import STRIP, CardSpace, finish_page, make_spaces
from service.pages.page import Page
from service.pages.ruler import Ruler
from service.printed import to_print

_MOST_PICTURE_PAGES = 2
"""A carer reads two cards of pictures; past that, lists show more at once (common practice)."""


def fit_lid_card(card: LidCard, size: Size, ruler: Ruler) -> tuple[Page, ...]:
    """Lay a lid card out on as many pages of `size` as it needs.

    Where handling fills the first page, the contents begin on the second.

    Raises:
        DoesNotFitError: When head, handling and foot are higher than a page.
        SymbolError: When the QR symbol cannot be read at this size.
    """
    (only,) = make_spaces(card, size, ruler, of=1)
    if only.area.height_mm < 0:
        needed_mm = size.height_mm - only.area.height_mm
        raise DoesNotFitError(STRIP, needed_mm=needed_mm, available_mm=size.height_mm)
    for of in range(1, _MOST_PICTURE_PAGES + 1 + only.is_full):
        pages = _fit_pictures(card, make_spaces(card, size, ruler, of=of), ruler)
        if pages:
            return pages
    return fit_lists(card, size, ruler)


def _fit_pictures(card: LidCard, spaces: Sequence[CardSpace], ruler: Ruler) -> tuple[Page, ...]:
    """Show every object with its picture on these pages; empty where they have no room for it."""
    parts = _share_layers(card, spaces, ruler)
    if not parts:
        return ()
    whole = card if len(spaces) == 1 else None
    pages = []
    for space, layers in zip(spaces, parts, strict=True):
        fit = _find_fit(ruler, layers, space.area, whole)
        if fit is None:
            return ()
        pages.append(_draw_page(card, space, layers, fit, ruler))
    return tuple(pages)


def _share_layers(
    card: LidCard, spaces: Sequence[CardSpace], ruler: Ruler
) -> list[tuple[CardLayer, ...]]:
    """Share the objects between pages by the room each has; empty where that is not enough."""
    if not card.objects:
        return [() for _ in spaces]
    free = [space for space in spaces if not space.is_full]
    if len(free) == 1:
        return [() if space.is_full else card.layers for space in spaces]
    needs = measure_captions(ruler, card.objects, SCALES[-1])
    rooms = [capacity(_grid_space(space.area, card.layers), needs) for space in free]
    total = len(card.objects)
    if sum(rooms) < total or 0 in rooms:
        return []
    share = min(rooms[0], max(total - rooms[1], round(total * rooms[0] / sum(rooms))))
    # One object alone on the last card would look forgotten.
    share = min(share, total - 2) if total > 2 else share  # noqa: PLR2004 - two are company
    parts = iter(split_layers(card.layers, share))
    return [() if space.is_full else next(parts) for space in spaces]


def split_layers(
    layers: Sequence[CardLayer], count: int
) -> tuple[tuple[CardLayer, ...], tuple[CardLayer, ...]]:
    """Split layers after `count` objects; a layer that is cut goes on under the same heading."""
    before, after = [], []
    for layer in layers:
        here = layer.objects[:count]
        rest = layer.objects[len(here) :]
        count -= len(here)
        if here:
            before.append(CardLayer(layer.heading, here))
        if rest:
            heading = (
                to_print("{heading} (continued)", heading=layer.heading)
                if here and layer.heading
                else layer.heading
            )
            after.append(CardLayer(heading, rest))
    return tuple(before), tuple(after)


def _find_fit(
    ruler: Ruler, layers: Sequence[CardLayer], area: Rect, card: LidCard | None
) -> Fit | None:
    """Choose the largest type that still leaves pictures of the size that goes with it."""
    objects = [item for layer in layers for item in layer.objects]
    if not objects:
        return Fit(GridPlan(1, 1, area.size, area.size, beside=False), SCALES[-1], fixed=False)
    groups = [len(layer.objects) for layer in layers]
    space = _grid_space(area, layers)
    for scale in SCALES:
        needs = measure_captions(ruler, objects, scale)
        least_mm = max(scale.least_picture_mm, FLOOR_MM)
        if card is not None and card.grid is not None and _repeats_grid(card):
            grid = card.grid
            fixed = plan_grid(space, groups, needs, columns=grid.columns, rows=grid.rows)
            if fixed and fixed.picture_mm >= least_mm:
                return Fit(fixed, scale, fixed=True)
            if scale is not SCALES[-1]:
                continue
        plan = plan_grid(space, groups, needs)
        if plan and plan.picture_mm >= least_mm:
            return Fit(plan, scale, fixed=False)
    return None


def _repeats_grid(card: LidCard) -> bool:
    """Tell whether each object has a compartment of its own in the container's grid."""
    cells = [item.cell for item in card.objects]
    grid = card.grid
    return (
        grid is not None
        and len(set(cells)) == len(cells)
        and all(cell and cell[0] < grid.columns and cell[1] < grid.rows for cell in cells)
    )


def _grid_space(area: Rect, layers: Sequence[CardLayer]) -> GridSpace:
    headed = any(layer.heading for layer in layers)
    return GridSpace(area.size, 3.2, 2.4, 5.6 if headed else 0.0)


def _draw_page(
    card: LidCard, space: CardSpace, layers: Sequence[CardLayer], fit: Fit, ruler: Ruler
) -> Page:
    """Set the cells of one page; which page of how many is known by its space."""
    cells = set_grid(ruler, layers, space.area, fit, _grid_space(space.area, layers))
    return finish_page(card, space, cells)
