"""Tests for a page in words."""

from __future__ import annotations

from service.geometry import Rect, Size
from service.pages.describe import describe_page
from service.pages.page import MarkBlock, Page, PictureBlock, ShapeBlock, TextBlock, TextStyle

RECT = Rect(0, 0, 10, 10)


def test_words_come_in_the_order_of_reading() -> None:
    """Whole texts and the words of pictures are said, shapes are not, repeats once."""
    blocks = (
        TextBlock("title", RECT, ("Brass…",), TextStyle(10), "Brass gauge"),
        ShapeBlock("rule", RECT),
        PictureBlock("photo", RECT, "front.jpg", "Brass gauge, front"),
        MarkBlock("mark", RECT, "fragile", "Fragile"),
        TextBlock("caution", RECT, ("Fragile",), TextStyle(10), "Fragile"),
    )
    page = Page("lid-card", "B-042", "Brass", 1, 1, Size(100, 60), blocks)
    assert describe_page(page) == "Brass gauge. Brass gauge, front. Fragile"
