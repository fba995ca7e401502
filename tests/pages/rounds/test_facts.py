from __future__ import annotations

from service.geometry import Rect
from service.pages.page import ShapeBlock, TextBlock, TextStyle
from service.pages.rounds.facts import Fact, FactLook, set_facts
from tests.pages.made import PLAIN

LOOK = FactLook(TextStyle(7.0), TextStyle(10.0), label_mm=15.0, pen_mm=7.0, gap_mm=0.5)
AREA = Rect(5.0, 20.0, 80.0, 0.0)


def test_a_value_stands_beside_its_label() -> None:
    """What is not known leaves a line to write on, below the row before."""
    label, value, other, line = set_facts(
        PLAIN, [Fact("To", "I. Hale"), Fact("Why", "")], LOOK, AREA
    )
    assert isinstance(value, TextBlock)
    assert (value.whole, value.rect.x_mm, value.rect.y_mm) == ("I. Hale", 20.0, 20.0)
    assert label.rect.x_mm == other.rect.x_mm == 5.0
    assert isinstance(line, ShapeBlock)
    assert (line.rect.x_mm, line.rect.right_mm) == (20.0, 85.0)
    assert line.rect.y_mm > value.rect.bottom_mm + 5.0


def test_a_long_value_is_shortened_where_that_is_allowed() -> None:
    """Two lines with an ellipsis; without a limit all of it."""
    words = "a very long reason " * 20
    (_, short) = set_facts(PLAIN, [Fact("Why", words, 2)], LOOK, AREA)
    (_, whole) = set_facts(PLAIN, [Fact("Why", words)], LOOK, AREA)
    assert isinstance(short, TextBlock)
    assert isinstance(whole, TextBlock)
    assert (len(short.lines), short.is_shortened, whole.is_shortened) == (2, True, False)
