"""Heights of letters against NUREG-0700 and ASR A6 (ISO 9241-303)."""

from __future__ import annotations

import math

import pytest

from service.legibility import cap_height_mm, reading_distance_mm


@pytest.mark.parametrize(
    ("distance_mm", "angle_arcmin", "height_mm"),
    [
        (500, 22, 3.20),
        (500, 31, 4.51),
        (600, 20, 3.49),
        (300, 16, 1.40),
        (300, 20, 1.75),
        (300, 22, 1.92),
        (500, 16, 2.33),
        (500, 20, 2.91),
        (600, 16, 2.79),
        (600, 22, 3.84),
        (1000, 16, 4.65),
        (1000, 20, 5.82),
        (1000, 22, 6.40),
        (1500, 16, 6.98),
        (1500, 20, 8.73),
        (1500, 22, 9.60),
        (2000, 16, 9.31),
        (2000, 20, 11.64),
        (2000, 22, 12.80),
        (3000, 16, 13.96),
        (3000, 20, 17.45),
        (3000, 22, 19.20),
    ],
)
def test_heights_for_distances(distance_mm: float, angle_arcmin: float, height_mm: float) -> None:
    """NUREG-0700, item 1.3.1-4: the height for a distance and a visual angle."""
    assert cap_height_mm(distance_mm, angle_arcmin=angle_arcmin) == pytest.approx(
        height_mm, abs=0.005
    )


@pytest.mark.parametrize("distance_mm", [300, 500, 1500, 3000])
@pytest.mark.parametrize("angle_arcmin", [16, 20, 22])
def test_the_second_formula(distance_mm: float, angle_arcmin: float) -> None:
    """NUREG-0700 also gives h = 6.283 D a / 21600, which agrees to a ten-thousandth."""
    height_mm = 6.283 * distance_mm * angle_arcmin / 21_600
    assert cap_height_mm(distance_mm, angle_arcmin=angle_arcmin) == pytest.approx(
        height_mm, rel=1e-4
    )


@pytest.mark.parametrize(
    ("distance_mm", "least_mm", "most_mm"),
    [(500, 3.2, 4.5), (600, 3.9, 5.5), (700, 4.5, 6.4), (800, 5.2, 7.3)],
)
def test_the_range_for_screens(distance_mm: float, least_mm: float, most_mm: float) -> None:
    """ASR A6, 6.1.3: 22 and 31 minutes of arc, printed to one decimal, mostly rounded up."""
    for angle_arcmin, printed_mm in ((22, least_mm), (31, most_mm)):
        height_mm = cap_height_mm(distance_mm, angle_arcmin=angle_arcmin)
        assert height_mm == pytest.approx(printed_mm, abs=0.1)
        assert printed_mm in {
            math.ceil(height_mm * 10) / 10,
            round(height_mm, 1),
        }


def test_the_preferred_height_is_the_rule_of_thumb() -> None:
    """FAA guidance: a two-hundredth of the distance, less than the 20 minutes taken here."""
    assert 1500 / 200 < cap_height_mm(1500) < 1500 / 200 * 1.2


def test_distances_turn_heights_round() -> None:
    """The distance for a height is the distance the height was made for."""
    assert reading_distance_mm(cap_height_mm(1500)) == pytest.approx(1500)
