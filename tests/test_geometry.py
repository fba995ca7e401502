from __future__ import annotations

import pytest

from service.geometry import Insets, Rect, Size

A5 = Size(148.0, 210.0)
FRAME = Rect(10.0, 20.0, 30.0, 40.0)


def test_a_size_turned() -> None:
    """Turning exchanges width and height, and twice is as before."""
    assert A5.turned == Size(210.0, 148.0)
    assert A5.turned.turned == A5
    assert (A5.is_landscape, A5.turned.is_landscape, Size(5, 5).is_landscape) == (
        False,
        True,
        False,
    )


@pytest.mark.parametrize(
    ("other", "fits"),
    [
        (A5, True),
        (Size(148.0009, 210.0009), True),
        (Size(148.01, 210.0), False),
        (Size(148.0, 210.01), False),
        (A5.turned, False),
    ],
)
def test_what_a_size_holds(other: Size, *, fits: bool) -> None:
    """A size holds what is no larger than itself, within a thousandth of a mm, unturned."""
    assert A5.holds(other) is fits


def test_edges_of_a_rectangle() -> None:
    """Right and bottom follow from corner and size; y runs downwards."""
    assert (FRAME.right_mm, FRAME.bottom_mm, FRAME.size) == (40.0, 60.0, Size(30.0, 40.0))


def test_moving_keeps_the_size() -> None:
    """A moved rectangle differs in its corner alone."""
    assert FRAME.moved(1.5, -2.5) == Rect(11.5, 17.5, 30.0, 40.0)


def test_insets_in_the_order_of_css() -> None:
    """Insets count from the top, clockwise."""
    assert FRAME.inset(Insets(1, 2, 3, 4)) == Rect(14.0, 21.0, 24.0, 36.0)


@pytest.mark.parametrize(
    ("other", "inside"),
    [
        (FRAME, True),
        (Rect(9.9995, 20, 30, 40), True),
        (Rect(9.9, 20, 5, 5), False),
        (Rect(10, 19.9, 5, 5), False),
        (Rect(10, 20, 30.1, 5), False),
        (Rect(10, 20, 5, 40.1), False),
    ],
)
def test_what_a_rectangle_holds(other: Rect, *, inside: bool) -> None:
    """Nothing held reaches over any edge by more than the tolerance."""
    assert FRAME.holds(other) is inside


@pytest.mark.parametrize(
    ("other", "meets"),
    [
        (Rect(39, 59, 5, 5), True),
        (Rect(20, 30, 1, 1), True),
        (Rect(40, 20, 5, 5), False),
        (Rect(5, 20, 5, 5), False),
        (Rect(10, 60, 5, 5), False),
        (Rect(10, 15, 5, 5), False),
    ],
    ids=["corner", "within", "right edge", "left edge", "bottom edge", "top edge"],
)
def test_overlap_is_more_than_an_edge(other: Rect, *, meets: bool) -> None:
    """Rectangles that share an edge do not overlap, whichever is asked."""
    assert FRAME.overlaps(other) is other.overlaps(FRAME) is meets
