"""How far a printer can be off, and how it is said.

Wider than any printer that works: what lies beyond is a sheet printed at another size, fed askew or
measured from the wrong edge. The limits are ours.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from service.sheets.calibration.doubt import READING_MM
from service.sheets.correction import Correction

MOST_SCALE_RATIO = 0.03
MOST_ROTATION_DEG = 2.0
MOST_SKEW_DEG = 1.0
MOST_SHIFT_MM = 10.0
"""At the top left corner of the sheet."""


def impossible(printer: Correction) -> Iterator[str]:
    """Say in which ways a printer cannot be off; `printer` is where ink lands."""
    for ratio, way in ((printer.scale_x_ratio, "across"), (printer.scale_y_ratio, "down")):
        # Written so that what is no number is refused as well.
        if not abs(ratio - 1) <= MOST_SCALE_RATIO:
            yield (
                f"the print is {_percent(ratio)} {way}, more than any printer does by itself:"
                " print the ruler sheet at 100 %, not fitted to the page"
            )
    if not abs(printer.rotation_deg) <= MOST_ROTATION_DEG:
        yield (
            f"the print is turned by {abs(printer.rotation_deg):.1f} degrees: put the paper"
            " straight into the tray and print the ruler sheet again"
        )
    if not abs(printer.skew_deg) <= MOST_SKEW_DEG:
        yield (
            f"right angles are off by {abs(printer.skew_deg):.1f} degrees, more than any printer"
            " does: measure again, always from the left and the top edge"
        )
    if not math.hypot(printer.shift_x_mm, printer.shift_y_mm) <= MOST_SHIFT_MM:
        yield (
            f"the print is shifted by {math.hypot(printer.shift_x_mm, printer.shift_y_mm):.1f} mm"
            " in the top left corner: measure again, always from the left and the top edge"
        )


def describe(printer: Correction) -> str:
    """Say how a printer is off, in words; `printer` is where ink lands."""
    across = "right" if printer.shift_x_mm >= 0 else "left"
    down = "low" if printer.shift_y_mm >= 0 else "high"
    turn = "clockwise" if printer.rotation_deg >= 0 else "anticlockwise"
    return (
        f"at the top left corner {abs(printer.shift_x_mm):.2f} mm too far {across} and"
        f" {abs(printer.shift_y_mm):.2f} mm too {down}; {_percent(printer.scale_x_ratio)} across,"
        f" {_percent(printer.scale_y_ratio)} down; turned {abs(printer.rotation_deg):.2f} degrees"
        f" {turn}, right angles off by {abs(printer.skew_deg):.2f} degrees"
    )


def explain_residual(residual_mm: float) -> str:
    """Say what it means that the worst cross is so far off once corrected; the steps are ours."""
    if residual_mm <= READING_MM:
        return "as exactly as a ruler can be read"
    if residual_mm <= 2 * READING_MM:
        return "a little more than a ruler leaves; good enough for labels with a margin"
    return "more than it should be: measure again, or look whether the paper slips in the tray"


def _percent(ratio: float) -> str:
    return f"{abs(ratio - 1) * 100:.2f} % too {'large' if ratio >= 1 else 'small'}"
