from __future__ import annotations

from service.sheets.stocks import A4, A6, STOCKS, find_stock
from service.web.views.paper.drawing import draw_crosses, draw_stock, figure


def test_every_label_is_drawn_where_it_lies() -> None:
    """One closed rectangle a position, in millimetres of the sheet."""
    stock = find_stock("A4 card 4xA6", STOCKS)
    drawing = draw_stock(stock)
    assert drawing.labels.count("z") == 4
    assert drawing.labels.startswith("M0 0.5h105v148h-105z")
    assert (drawing.page, drawing.width_px) == (A4, 105)


def test_crosses_are_drawn_where_they_are_printed() -> None:
    """Two lines a cross; narrow paper has four of them."""
    assert draw_crosses(A4).labels.count("M") == 16
    assert draw_crosses(A6).labels.count("M") == 8
    assert "M7 15h16" in draw_crosses(A4).labels


def test_a_drawing_needs_no_style_of_its_own() -> None:
    """Pages allow no style attribute; what it shows stands in words beside it."""
    for stock in STOCKS:
        written = figure(draw_stock(stock))
        assert "style" not in written
        assert 'aria-hidden="true"' in written
