from __future__ import annotations

import pytest

from service.legibility import (
    LEAST_ANGLE_ARCMIN,
    cap_height_mm,
    contrast_ratio,
    reading_distance_mm,
    sign_distance_mm,
)


@pytest.mark.parametrize("distance_mm", [300.0, 500.0, 1500.0, 4000.0])
def test_height_and_distance_are_inverse(distance_mm: float) -> None:
    """The height asked for at a distance is read from that distance."""
    for angle_arcmin in (LEAST_ANGLE_ARCMIN, 20.0, 22.0):
        height_mm = cap_height_mm(distance_mm, angle_arcmin=angle_arcmin)
        assert reading_distance_mm(height_mm, angle_arcmin=angle_arcmin) == pytest.approx(
            distance_mm
        )


def test_a_sign_carries_with_its_height() -> None:
    """Twice as high carries twice as far, and nothing carries nowhere."""
    assert sign_distance_mm(20.0) == 2 * sign_distance_mm(10.0) == 2000.0
    assert sign_distance_mm(0.0) == 0.0


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [("#000000", "#FFFFFF", 21.0), ("#777777", "#777777", 1.0), ("#767676", "#FFFFFF", 4.54)],
)
def test_contrast(one: str, other: str, ratio: float) -> None:
    """Black on white is 21 to 1, whichever is named first (WCAG 2.1, technique G18)."""
    assert contrast_ratio(one, other) == pytest.approx(ratio, abs=0.005)
    assert contrast_ratio(other, one) == contrast_ratio(one, other)


@pytest.mark.parametrize("colour", ["black", "#FFF", "#GGGGGG", "#0000000", ""])
def test_other_ways_of_writing_a_colour_are_refused(colour: str) -> None:
    """A colour is six hexadecimal digits behind a sign."""
    with pytest.raises(ValueError, match="written #RRGGBB"):
        contrast_ratio(colour, "#FFFFFF")
