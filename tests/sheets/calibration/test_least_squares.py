from __future__ import annotations

import random

import numpy as np
import pytest

from service.sheets.calibration.least_squares import fit, leverages, solve, times


def random_rows(rng: random.Random, count: int, unknowns: int) -> list[list[float]]:
    """Draw rows with a leading one."""
    return [[1.0, *(rng.uniform(-2, 2) for _ in range(unknowns - 1))] for _ in range(count)]


@pytest.mark.parametrize("seed", range(20))
def test_fits_as_another_library_does(seed: int) -> None:
    """The unknowns and the leverages are those of numpy."""
    rng = random.Random(seed)  # noqa: S311 - no secret
    unknowns = rng.randint(1, 6)
    rows = random_rows(rng, rng.randint(unknowns + 2, 20), unknowns)
    values = [rng.gauss(0, 3) for _ in rows]
    outside = np.linalg.lstsq(np.array(rows), np.array(values), rcond=None)[0]
    assert fit(rows, values) == pytest.approx(outside.tolist(), abs=1e-9)
    hat = np.array(rows) @ np.linalg.pinv(np.array(rows))
    assert leverages(rows) == pytest.approx(np.diag(hat).tolist(), abs=1e-9)


def test_solves_with_the_largest_pivot() -> None:
    """A nothing in the corner is no hindrance."""
    assert solve([[0.0, 2.0], [4.0, 0.0]], [6.0, 8.0]) == (2.0, 3.0)


def test_refuses_what_leaves_an_unknown_open() -> None:
    """Points in one line fix no plane."""
    rows = [[1.0, place, 2 * place] for place in range(5)]
    with pytest.raises(ValueError, match="open"):
        fit(rows, [0.0] * 5)


def test_times_is_the_sum_of_products() -> None:
    """A row times the unknowns is one number."""
    assert times([1.0, 2.0], [3.0, 4.0]) == 11.0
