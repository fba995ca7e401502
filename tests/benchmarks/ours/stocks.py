"""The sheets of the benchmark: a card alone on its page, and labels three across and seven down."""

from __future__ import annotations

from service.geometry import Size
from service.sheets.stock import Medium, Stock
from tests.benchmarks.content import measures
from tests.benchmarks.ours.pages import CARD_SIZE, LABEL_SIZE

CARD_STOCK = Stock(
    name="A5 card",
    page=CARD_SIZE,
    columns=1,
    rows=1,
    label=CARD_SIZE,
    pitch_x_mm=CARD_SIZE.width_mm,
    pitch_y_mm=CARD_SIZE.height_mm,
    left_mm=0,
    top_mm=0,
    radius_mm=0,
    medium=Medium.STICKY,
)
LABEL_STOCK = Stock(
    name="A4 3x7 63.5x38.1",
    page=Size(measures.SHEET_WIDTH, measures.SHEET_HEIGHT),
    columns=measures.COLUMNS,
    rows=measures.ROWS,
    label=LABEL_SIZE,
    pitch_x_mm=measures.LABEL_ACROSS,
    pitch_y_mm=measures.LABEL_DOWN,
    left_mm=measures.SHEET_LEFT,
    top_mm=measures.SHEET_TOP,
    radius_mm=0,
    medium=Medium.STICKY,
)
