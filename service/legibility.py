"""What eyes need: the height of letters and marks for a distance, and contrast."""

from __future__ import annotations

import math
import re

from service.units import ARCMINUTES_PER_DEGREE

PREFERRED_ANGLE_ARCMIN = 20.0
LEAST_ANGLE_ARCMIN = 16.0
"""Height of a capital as the eye sees it (NUREG-0700, 1.3.1-4: 20 to 22 preferred, 16 least)."""

SIGN_DISTANCE_RATIO = 100.0
"""Distance over height of a sign lit from outside (ISO 3864-1, factor Z, as EN 1838 uses it)."""

LEAST_CONTRAST_RATIO = 4.5
"""For text of ordinary size (WCAG 2.1, success criterion 1.4.3)."""

LEAST_MARK_CONTRAST_RATIO = 3.0
"""For marks and large text (WCAG 2.1, success criteria 1.4.11 and 1.4.3)."""

# WCAG 2.1, definition of relative luminance, with the threshold corrected in 2021; colours of
# eight bits come out the same under both.
_LINEAR_BELOW = 0.04045
_LUMINANCE_SHARES = (0.2126, 0.7152, 0.0722)
_FLARE = 0.05
_COLOUR = re.compile("#[0-9A-Fa-f]{6}")


def cap_height_mm(distance_mm: float, *, angle_arcmin: float = PREFERRED_ANGLE_ARCMIN) -> float:
    """Give the height of capitals to be read from a distance: 2 D tan(a / 2), NUREG-0700."""
    return distance_mm * _height_per_distance(angle_arcmin)


def reading_distance_mm(
    cap_height_mm: float, *, angle_arcmin: float = PREFERRED_ANGLE_ARCMIN
) -> float:
    """Give the distance from which capitals of a height are read: `cap_height_mm` turned round."""
    return cap_height_mm / _height_per_distance(angle_arcmin)


def sign_distance_mm(height_mm: float) -> float:
    """Give the distance to which a sign of a height carries in good light: Z times its height.

    No one factor holds for every symbol (ISO 3864-1, annex A): a fine drawing carries less far.
    """
    return height_mm * SIGN_DISTANCE_RATIO


def contrast_ratio(one: str, other: str) -> float:
    """Give the contrast of two colours such as `#F9A800`, 1 to 21 (WCAG 2.1, technique G18).

    It is a measure for screens; print only borrows it.

    Raises:
        ValueError: When a colour is not written as `#RRGGBB`.
    """
    darker, lighter = sorted((_luminance_ratio(one), _luminance_ratio(other)))
    return (lighter + _FLARE) / (darker + _FLARE)


def _height_per_distance(angle_arcmin: float) -> float:
    return 2 * math.tan(math.radians(angle_arcmin / ARCMINUTES_PER_DEGREE) / 2)


def _luminance_ratio(colour: str) -> float:
    """Give the relative luminance, from 0 for black to 1 for white.

    Raises:
        ValueError: When the colour is not written as `#RRGGBB`.
    """
    if not _COLOUR.fullmatch(colour):
        msg = f"a colour is written #RRGGBB, not {colour!r}"
        raise ValueError(msg)
    channels = bytes.fromhex(colour[1:])
    return sum(
        share * _linear(channel) for share, channel in zip(_LUMINANCE_SHARES, channels, strict=True)
    )


def _linear(channel: int) -> float:
    value = channel / 255
    if value <= _LINEAR_BELOW:
        return value / 12.92
    return float(((value + 0.055) / 1.055) ** 2.4)
