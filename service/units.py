"""Conversion factors, the only place where they stand.

The inch and the pound are exact by the international yard and pound agreement of 1959 (NIST Special
Publication 811, appendix B). The point is the desktop-publishing point of ISO 32000 (1/72 inch).
"""

from __future__ import annotations

MM_PER_INCH = 25.4
POINTS_PER_INCH = 72.0
PIXELS_PER_INCH_CSS = 96.0
GRAMS_PER_KILOGRAM = 1000.0
GRAMS_PER_POUND = 453.59237
OUNCES_PER_POUND = 16.0
ARCMINUTES_PER_DEGREE = 60.0


def mm_from_inches(inches: float) -> float:
    """Turn inches into mm."""
    return inches * MM_PER_INCH


def mm_from_points(points_pt: float) -> float:
    """Turn points into mm."""
    return points_pt * MM_PER_INCH / POINTS_PER_INCH


def points_from_mm(length_mm: float) -> float:
    """Turn mm into points."""
    return length_mm * POINTS_PER_INCH / MM_PER_INCH


def mm_from_css_pixels(pixels_px: float) -> float:
    """Turn CSS pixels (96 to the inch, CSS Values 3) into mm."""
    return pixels_px * MM_PER_INCH / PIXELS_PER_INCH_CSS


def dots_from_mm(length_mm: float, *, resolution_dpi: float) -> float:
    """Count printer or raster dots along a length."""
    return length_mm / MM_PER_INCH * resolution_dpi


def mm_from_dots(dots: float, *, resolution_dpi: float) -> float:
    """Turn printer or raster dots into mm."""
    return dots * MM_PER_INCH / resolution_dpi


def kg_from_grams(mass_g: float) -> float:
    """Turn grams into kilograms."""
    return mass_g / GRAMS_PER_KILOGRAM


def css_pixels_from_mm(length_mm: float) -> float:
    """Turn mm into CSS pixels."""
    return length_mm * PIXELS_PER_INCH_CSS / MM_PER_INCH


def css_pixels_from_points(points_pt: float) -> float:
    """Turn points into CSS pixels."""
    return points_pt * PIXELS_PER_INCH_CSS / POINTS_PER_INCH


MM_PER_LENGTH_UNIT = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": MM_PER_INCH, "ft": 12 * MM_PER_INCH}
GRAMS_PER_MASS_UNIT = {
    "mg": 0.001,
    "g": 1.0,
    "kg": GRAMS_PER_KILOGRAM,
    "oz": GRAMS_PER_POUND / OUNCES_PER_POUND,
    "lb": GRAMS_PER_POUND,
}


def mm_from_length(value: float, *, unit: str) -> float:
    """Turn a length in `unit` (mm, cm, m, in, ft) into mm, rounded to 0.001 mm.

    The rounding takes away what binary fractions leave behind (30.400000000000002).
    """
    return round(value * MM_PER_LENGTH_UNIT[unit], 3)


def grams_from_mass(value: float, *, unit: str) -> float:
    """Turn a mass in `unit` (mg, g, kg, oz, lb) into grams, rounded to 0.001 g."""
    return round(value * GRAMS_PER_MASS_UNIT[unit], 3)
