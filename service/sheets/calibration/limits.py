"""How far a printer can be off, and how it is said.

Wider than any printer that works: what lies beyond is a sheet printed at another size, fed askew or
measured from the wrong edge. The limits are ours.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from service.sentence import Sentence
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
    is_clockwise = printer.rotation_deg >= 0
    return Sentence(
        "at the top left corner {x_mm:.2f} mm too far {across} and {y_mm:.2f} mm too {down};"
        " {x_scale} across, {y_scale} down; turned {turn_deg:.2f} degrees {turn},"
        " right angles off by {skew_deg:.2f} degrees",
        x_mm=abs(printer.shift_x_mm),
        across=Sentence("right") if printer.shift_x_mm >= 0 else Sentence("left"),
        y_mm=abs(printer.shift_y_mm),
        down=Sentence("low") if printer.shift_y_mm >= 0 else Sentence("high"),
        x_scale=_percent(printer.scale_x_ratio),
        y_scale=_percent(printer.scale_y_ratio),
        turn_deg=abs(printer.rotation_deg),
        turn=Sentence("clockwise") if is_clockwise else Sentence("anticlockwise"),
        skew_deg=abs(printer.skew_deg),
    )


def explain_residual(residual_mm: float) -> str:
    """Say what it means that the worst cross is so far off once corrected; the steps are ours."""
    if residual_mm <= READING_MM:
        return Sentence("as exactly as a ruler can be read")
    if residual_mm <= 2 * READING_MM:
        return Sentence("a little more than a ruler leaves; good enough for labels with a margin")
    return Sentence(
        "more than it should be: measure again, or look whether the paper slips in the tray"
    )


def _percent(ratio: float) -> str:
    percent = abs(ratio - 1) * 100
    if ratio >= 1:
        return Sentence("{percent:.2f} % too large", percent=percent)
    return Sentence("{percent:.2f} % too small", percent=percent)
