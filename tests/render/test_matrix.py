from __future__ import annotations

from decimal import Decimal

from service.render.matrix import IDENTITY, Matrix, matrix_of, moved, times

QUARTER: Matrix = (0.0, -1.0, 1.0, 0.0, 10.0, 20.0)


def test_identity_changes_nothing() -> None:
    """Before or after another matrix, identity leaves it as it is."""
    assert times(IDENTITY, QUARTER) == QUARTER == times(QUARTER, IDENTITY)


def test_the_inner_matrix_works_first() -> None:
    """Scaling and then moving is not moving and then scaling (ISO 32000-1, 8.3.4)."""
    scaled: Matrix = (2.0, 0.0, 0.0, 2.0, 0.0, 0.0)
    shifted: Matrix = (1.0, 0.0, 0.0, 1.0, 5.0, 0.0)
    assert times(scaled, shifted)[4:] == (5.0, 0.0)
    assert times(shifted, scaled)[4:] == (10.0, 0.0)


def test_a_point_moves_in_its_own_space() -> None:
    """One unit to the right in a space turned clockwise goes down."""
    assert moved(QUARTER, 1.0, 0.0)[4:] == (10.0, 19.0)


def test_six_numbers_are_read() -> None:
    """PDF libraries give decimals, integers or texts of them."""
    assert matrix_of([1, 0, 0, Decimal("1.5"), "2", 3]) == (1.0, 0.0, 0.0, 1.5, 2.0, 3.0)
