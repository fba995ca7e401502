from __future__ import annotations

import re

from service.sheets.stocks import STOCKS, find_stock
from service.web.views.desk.sheets import look_of, write_looks

LABELS = find_stock("A4 2x4 99.1x67.7", STOCKS)


def test_a_stock_is_drawn_to_scale() -> None:
    """Two columns on a page of 210 x 297 mm; lengths are hundredths of the page's width."""
    style = write_looks([LABELS])
    assert "aspect-ratio: 210.00 / 297.00" in style
    assert "repeat(2, minmax(2.75rem, 1fr))" in style
    # Left (210 - 101.64 - 99.1) / 2 = 4.63 mm, of 210 mm 2.20; the gap 2.54 mm, 1.21.
    padding = re.search(r"padding: \S+ \S+ \S+ (\S+);", style)
    assert padding is not None
    assert padding[1] == "2.20cqw"
    assert "gap: 0.00cqw 1.21cqw" in style


def test_every_stock_has_a_look_of_its_own() -> None:
    """No two share a class, and a class holds no sign that a style would read otherwise."""
    looks = {look_of(stock) for stock in STOCKS}
    assert len(looks) == len(STOCKS)
    assert all(re.fullmatch(r"[a-z0-9-]+", look) for look in looks)
