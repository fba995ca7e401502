from __future__ import annotations

from collections.abc import Callable

import pytest

from service import units


@pytest.mark.parametrize(
    ("convert", "value", "result"),
    [
        (units.mm_from_inches, 2.0, 50.8),
        (units.mm_from_points, 72.0, 25.4),
        (units.points_from_mm, 25.4, 72.0),
        (units.mm_from_css_pixels, 96.0, 25.4),
        (units.css_pixels_from_mm, 25.4, 96.0),
        (units.css_pixels_from_points, 72.0, 96.0),
        (units.kg_from_grams, 1250.0, 1.25),
    ],
    ids=lambda value: getattr(value, "__name__", None),
)
def test_conversions(convert: Callable[[float], float], value: float, result: float) -> None:
    """An inch is 25.4 mm, 72 points (ISO 32000) and 96 CSS pixels (CSS Values 3)."""
    assert convert(value) == pytest.approx(result, abs=1e-12)


@pytest.mark.parametrize(("dots", "dpi"), [(12, 600), (6, 300), (4, 203)])
def test_dots_and_mm_are_inverse(dots: int, dpi: int) -> None:
    """Dots turned into mm and back are the same dots."""
    length_mm = units.mm_from_dots(dots, resolution_dpi=dpi)
    assert length_mm == pytest.approx(dots * 25.4 / dpi)
    assert units.dots_from_mm(length_mm, resolution_dpi=dpi) == pytest.approx(dots)


@pytest.mark.parametrize(
    ("value", "unit", "length_mm"),
    [(3.04, "cm", 30.4), (1, "m", 1000), (1, "in", 25.4), (5, "ft", 1524), (0.1234, "mm", 0.123)],
)
def test_lengths(value: float, unit: str, length_mm: float) -> None:
    """Lengths come out in mm without the dust of binary fractions (NIST SP 811)."""
    assert units.mm_from_length(value, unit=unit) == length_mm


@pytest.mark.parametrize(
    ("value", "unit", "mass_g"),
    [(1, "lb", 453.592), (1, "oz", 28.35), (0.3, "kg", 300), (500, "mg", 0.5), (7, "g", 7)],
)
def test_masses(value: float, unit: str, mass_g: float) -> None:
    """Masses come out in grams; the pound is 453.59237 g (NIST SP 811)."""
    assert units.grams_from_mass(value, unit=unit) == mass_g
