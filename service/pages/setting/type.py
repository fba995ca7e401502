"""Type sizes from reading distances, for the one face cards are set in.

The cap height of a text read at a distance follows from the visual angle (NUREG-0700, item
1.3.1-4): 20 arc minutes are preferred, 16 the least.
"""

from __future__ import annotations

from service.legibility import LEAST_ANGLE_ARCMIN, PREFERRED_ANGLE_ARCMIN, cap_height_mm
from service.units import mm_from_points, points_from_mm

CAP_HEIGHT_RATIO = 0.668
"""Cap height over type size of Atkinson Hyperlegible Next (its OS/2 table)."""
CONTENT_RATIO = 1.3
"""Ascent and descent together over type size (its hhea table); caps stand in their middle."""

LID_NUMBER_DISTANCE_MM = 1500.0
OBJECT_NUMBER_DISTANCE_MM = 500.0
CAPTION_DISTANCE_MM = 350.0


def size_for_caps_pt(height_mm: float) -> float:
    """Give the type size whose capitals are `height_mm` high."""
    return points_from_mm(height_mm / CAP_HEIGHT_RATIO)


def caps_mm(size_pt: float) -> float:
    """Give the height of capitals at a type size."""
    return mm_from_points(size_pt * CAP_HEIGHT_RATIO)


def size_for_distance_pt(
    distance_mm: float, *, angle_arcmin: float = PREFERRED_ANGLE_ARCMIN
) -> float:
    """Give the type size whose capitals fill an angle at a reading distance."""
    return size_for_caps_pt(cap_height_mm(distance_mm, angle_arcmin=angle_arcmin))


OBJECT_NUMBER_PT = size_for_distance_pt(OBJECT_NUMBER_DISTANCE_MM)
LEAST_OBJECT_NUMBER_PT = size_for_distance_pt(
    OBJECT_NUMBER_DISTANCE_MM, angle_arcmin=LEAST_ANGLE_ARCMIN
)
CAPTION_PT = size_for_distance_pt(CAPTION_DISTANCE_MM)
LEAST_CAPTION_PT = size_for_distance_pt(CAPTION_DISTANCE_MM, angle_arcmin=LEAST_ANGLE_ARCMIN)
