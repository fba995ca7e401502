from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.geometry import Size
from service.pages.lid.grid import FLOOR_MM, CaptionNeeds, GridSpace, capacity, plan_grid

NEEDS = CaptionNeeds(width_mm=24.0, height_mm=12.0, gap_mm=1.6)
SPACE = GridSpace(Size(135.0, 130.0), 3.2, 2.4)


@given(
    st.lists(st.integers(1, 20), min_size=1, max_size=4),
    st.integers(40, 200),
    st.integers(40, 260),
    st.integers(0, 6),
)
def test_cells_and_gaps_fill_the_space_and_no_more(
    groups: list[int], width_mm: int, height_mm: int, heading_mm: int
) -> None:
    """Cells, gaps and headings together are as wide and high as the space; all objects fit."""
    space = GridSpace(Size(width_mm, height_mm), 3.2, 2.4, heading_mm)
    plan = plan_grid(space, groups, NEEDS)
    if plan is None:
        return
    across_mm = plan.columns * plan.cell.width_mm + (plan.columns - 1) * space.gap_x_mm
    down_mm = plan.rows * plan.cell.height_mm + (plan.rows - 1) * space.gap_y_mm
    assert across_mm == pytest.approx(width_mm)
    assert down_mm + heading_mm * len(groups) == pytest.approx(height_mm)
    assert plan.rows >= sum(-(-count // plan.columns) for count in groups)
    assert plan.cell.holds(plan.frame)
    assert plan.picture_mm > 0


def test_one_object_gets_one_cell() -> None:
    """A single object fills the card."""
    plan = plan_grid(SPACE, [1], NEEDS)
    assert plan is not None
    assert (plan.columns, plan.rows, plan.cell) == (1, 1, SPACE.size)


def test_a_fixed_grid_keeps_its_columns_and_rows() -> None:
    """The container's compartments decide, not the number of objects."""
    plan = plan_grid(SPACE, [3], NEEDS, columns=4, rows=3)
    assert plan is not None
    assert (plan.columns, plan.rows) == (4, 3)


def test_captions_stand_beside_where_that_gives_larger_pictures() -> None:
    """A low, wide space has its captions at the right of the pictures."""
    plan = plan_grid(GridSpace(Size(180.0, 40.0), 3.2, 2.4), [2], NEEDS)
    assert plan is not None
    assert plan.beside
    assert plan.frame.height_mm == pytest.approx(40.0)


def test_nothing_fits_a_space_too_small() -> None:
    """Without room for the caption there is no plan."""
    assert plan_grid(GridSpace(Size(20.0, 10.0), 3.2, 2.4), [1], NEEDS) is None
    assert plan_grid(SPACE, [400], NEEDS) is None


@pytest.mark.parametrize("least_mm", [FLOOR_MM, 25.0, 40.0])
def test_capacity_is_the_last_number_that_fits(least_mm: float) -> None:
    """So many fit with pictures of that size, and one more does not."""
    most = capacity(SPACE, NEEDS, least_mm=least_mm)
    held, over = plan_grid(SPACE, [most], NEEDS), plan_grid(SPACE, [most + 1], NEEDS)
    assert held is not None
    assert held.picture_mm >= least_mm
    assert over is None or over.picture_mm < least_mm


def test_a_space_too_small_holds_nothing() -> None:
    """Its capacity is none."""
    assert capacity(GridSpace(Size(20.0, 10.0), 3.2, 2.4), NEEDS) == 0
