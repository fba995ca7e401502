from __future__ import annotations

import pytest

from service.geometry import Rect, Size
from service.sheets.calibration.ruler_sheet import (
    LINE_MM,
    bar_length_mm,
    bar_lines,
    cross_lines,
    crosses_on,
)
from service.sheets.stocks import A4, A5, A6, LETTER, PAGES


@pytest.mark.parametrize(
    ("page", "last", "count"),
    [(A4, (195, 282), 8), (A5, (133, 195), 8), (A6, (90, 133), 4), (LETTER, (200, 264), 8)],
    ids=["A4", "A5", "A6", "Letter"],
)
def test_crosses_stand_on_whole_millimetres(
    page: Size, last: tuple[float, float], count: int
) -> None:
    """A is 15 mm from left and top, D at the last whole millimetre 15 mm from the other edges."""
    crosses = {cross.name: cross.place for cross in crosses_on(page)}
    assert list(crosses) == list("ABCDEFGH"[:count])
    assert (crosses["A"].x_mm, crosses["A"].y_mm) == (15, 15)
    assert (crosses["D"].x_mm, crosses["D"].y_mm) == last
    assert all(place.x_mm % 1 == place.y_mm % 1 == 0 for place in crosses.values())


@pytest.mark.parametrize("page", PAGES.values(), ids=PAGES)
def test_every_line_can_be_printed(page: Size) -> None:
    """All lines stay 4.5 mm inside the paper, and no two crosses touch."""
    inside = Rect(4.5, 4.5, page.width_mm - 9, page.height_mm - 9)
    drawn = [list(cross_lines(cross)) for cross in crosses_on(page)]
    assert all(inside.holds(line) for lines in drawn for line in lines)
    for number, lines in enumerate(drawn):
        others = [line for other in drawn[number + 1 :] for line in other]
        assert not any(line.overlaps(other) for line in lines for other in others)


def test_rulers_have_a_tick_every_millimetre() -> None:
    """Each ruler has twenty ticks, a millimetre apart, with the cross's own line in the middle."""
    cross = crosses_on(A4)[0]
    lines = list(cross_lines(cross))
    upright = sorted(line.x_mm + LINE_MM / 2 for line in lines if line.width_mm == LINE_MM)
    assert upright == pytest.approx([5 + step for step in range(21)])
    assert len(lines) == 42


@pytest.mark.parametrize(("page", "length_mm"), [(A4, 100), (A5, 50), (A6, 50)])
def test_the_bar_is_as_long_as_it_says(page: Size, length_mm: float) -> None:
    """The middles of the two end lines are that far apart."""
    _, left, right = bar_lines(page, 80)
    assert right.x_mm - left.x_mm == pytest.approx(length_mm) == bar_length_mm(page)
