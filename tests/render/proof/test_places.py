from __future__ import annotations

from service.geometry import Rect
from service.render.proof.places import around, at


def test_a_place_is_told_for_a_ruler() -> None:
    """Tenths of a millimetre from the left and the top are what a person can measure."""
    told = at(Rect(12.04, 3.96, 20.0, 4.26))
    assert told == "at 12.0 mm from the left and 4.0 mm from the top (20.0 x 4.3 mm)"


def test_a_rectangle_grows_on_each_side() -> None:
    """Sideways and up and down are told apart; negative lengths shrink."""
    assert around(Rect(10.0, 10.0, 5.0, 5.0), x_mm=1.0, y_mm=-2.0) == Rect(9.0, 12.0, 7.0, 1.0)
