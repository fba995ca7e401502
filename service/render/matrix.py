"""Six numbers that take a point of one PDF space to another (ISO 32000-1, 8.3.4)."""

from __future__ import annotations

from collections.abc import Iterable

Matrix = tuple[float, float, float, float, float, float]

IDENTITY: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)


def times(inner: Matrix, outer: Matrix) -> Matrix:
    """Give the matrix that works as `inner` and then as `outer`."""
    a, b, c, d, e, f = inner
    m, n, o, p, q, r = outer
    return (
        a * m + b * o,
        a * n + b * p,
        c * m + d * o,
        c * n + d * p,
        e * m + f * o + q,
        e * n + f * p + r,
    )


def moved(matrix: Matrix, x: float, y: float) -> Matrix:
    """Give the matrix whose origin is the point (x, y) of its own space."""
    return times((1.0, 0.0, 0.0, 1.0, x, y), matrix)


def matrix_of(values: Iterable[object]) -> Matrix:
    """Read six numbers as a PDF library gives them."""
    a, b, c, d, e, f = (float(str(value)) for value in values)
    return (a, b, c, d, e, f)
