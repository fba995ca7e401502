"""Where everything lies on the benchmark's cards and labels, in mm; every engine keeps to it."""

from __future__ import annotations

CARD_WIDTH, CARD_HEIGHT = 210.0, 148.0
PHOTO = 38.0
GRID_LEFT, GRID_TOP, GRID_ACROSS, GRID_DOWN, GRID_COLUMNS = 5.0, 25.0, 41.0, 51.0, 4
SIDE_LEFT, SIDE_WIDTH = 170.0, 35.0
CARD_SYMBOL = 30.0
WARN_LEFT, WARN_TOP, WARN_WIDTH, WARN_HEIGHT, WARN_ACROSS = 5.0, 128.5, 64.66, 14.5, 67.66
MARK = 10.0

SHEET_WIDTH, SHEET_HEIGHT = 210.0, 297.0
LABEL_WIDTH, LABEL_HEIGHT = 63.5, 38.1
SHEET_LEFT, SHEET_TOP, LABEL_ACROSS, LABEL_DOWN = 7.25, 15.15, 66.0, 38.1
COLUMNS, ROWS = 3, 7
LABELS_A_SHEET = COLUMNS * ROWS
LABEL_SYMBOL = 20.0


def photo_corner(index: int) -> tuple[float, float]:
    """Give the top left corner of the n-th picture of a card."""
    row, column = divmod(index, GRID_COLUMNS)
    return GRID_LEFT + column * GRID_ACROSS, GRID_TOP + row * GRID_DOWN


def warn_left(index: int) -> float:
    """Give the left edge of the n-th warning of a card."""
    return WARN_LEFT + index * WARN_ACROSS


def label_corner(index: int) -> tuple[float, float]:
    """Give the top left corner of the n-th label of a sheet."""
    row, column = divmod(index, COLUMNS)
    return SHEET_LEFT + column * LABEL_ACROSS, SHEET_TOP + row * LABEL_DOWN
