"""Least squares for a handful of unknowns, by the normal equations."""

from __future__ import annotations

from collections.abc import Sequence

Row = Sequence[float]

_NOTHING = 1e-9
"""A pivot below this means that the rows leave an unknown open."""


def fit(rows: Sequence[Row], values: Sequence[float]) -> tuple[float, ...]:
    """Give the unknowns for which rows times unknowns come nearest to the values.

    The unknowns should be of like size: nothing is scaled here.

    Raises:
        ValueError: When the rows leave an unknown open.
    """
    right = [
        sum(row[i] * value for row, value in zip(rows, values, strict=True))
        for i in range(len(rows[0]))
    ]
    return solve(_squares(rows), right)


def leverages(rows: Sequence[Row]) -> tuple[float, ...]:
    """Give for each row how far its own value decides the fit at its place: 0 to 1.

    Raises:
        ValueError: When the rows leave an unknown open.
    """
    squares = _squares(rows)
    return tuple(times(row, solve(squares, row)) for row in rows)


def solve(square: Sequence[Row], right: Row) -> tuple[float, ...]:
    """Solve as many equations as unknowns, by elimination with the largest pivot.

    Raises:
        ValueError: When they leave an unknown open.
    """
    lines = [[*row, value] for row, value in zip(square, right, strict=True)]
    for column in range(len(lines)):
        best = max(range(column, len(lines)), key=lambda at: abs(lines[at][column]))
        lines[column], lines[best] = lines[best], lines[column]
        pivot = lines[column]
        if abs(pivot[column]) < _NOTHING:
            msg = "the equations leave an unknown open"
            raise ValueError(msg)
        for at, line in enumerate(lines):
            if at != column:
                share = line[column] / pivot[column]
                lines[at] = [one - share * other for one, other in zip(line, pivot, strict=True)]
    return tuple(line[-1] / line[at] for at, line in enumerate(lines))


def times(row: Row, unknowns: Row) -> float:
    """Give the sum of the products."""
    return sum(one * other for one, other in zip(row, unknowns, strict=True))


def _squares(rows: Sequence[Row]) -> list[list[float]]:
    unknowns = range(len(rows[0]))
    return [[sum(row[i] * row[j] for row in rows) for j in unknowns] for i in unknowns]
