"""Contrast against WCAG 2.1 and the colours the pictograms use."""

from __future__ import annotations

import pytest

from service.legibility import (
    LEAST_CONTRAST_RATIO,
    LEAST_MARK_CONTRAST_RATIO,
    contrast_ratio,
)

BLACK, WHITE = "#000000", "#FFFFFF"
YELLOW, RED, BLUE = "#F9A800", "#9B2423", "#005387"


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        (BLACK, WHITE, 21.00),
        ("#767676", WHITE, 4.54),
        ("#777777", WHITE, 4.48),
        ("#595959", WHITE, 7.00),
        ("#0000FF", WHITE, 8.59),
        ("#FF0000", WHITE, 4.00),
        ("#FF0000", "#0000FF", 2.15),
        (YELLOW, BLACK, 10.63),
        (YELLOW, WHITE, 1.98),
        (BLUE, WHITE, 8.12),
        (RED, WHITE, 7.86),
        ("#D05D29", BLACK, 5.28),
        ("#D05D29", WHITE, 3.98),
    ],
)
def test_ratios(one: str, other: str, ratio: float) -> None:
    """WCAG 2.1, technique G18, to two decimals, whichever colour comes first."""
    assert contrast_ratio(one, other) == pytest.approx(ratio, abs=0.0051)
    assert contrast_ratio(other, one) == contrast_ratio(one, other)


@pytest.mark.parametrize(
    ("mark", "ground"), [(BLACK, YELLOW), (WHITE, RED), (WHITE, BLUE), (BLACK, WHITE)]
)
def test_colours_of_marks(mark: str, ground: str) -> None:
    """What is drawn on a coloured panel can be told from it, words as well as marks."""
    assert contrast_ratio(mark, ground) >= LEAST_CONTRAST_RATIO > LEAST_MARK_CONTRAST_RATIO


def test_yellow_is_never_ink_on_white() -> None:
    """Yellow on white fails even for marks, so it may only lie behind black."""
    assert contrast_ratio(YELLOW, WHITE) < LEAST_MARK_CONTRAST_RATIO


@pytest.mark.parametrize("colour", ["", "F9A800", "#FFF", "#F9A80", "#GGGGGG", "black", "#F9 A8 "])
def test_refuses_other_notations(colour: str) -> None:
    """A colour that is not written #RRGGBB is a slip of the programmer."""
    with pytest.raises(ValueError, match="#RRGGBB"):
        contrast_ratio(colour, WHITE)
