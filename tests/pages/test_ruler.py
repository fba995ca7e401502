from __future__ import annotations

import pytest

from service.pages.page import Direction, TextStyle
from service.pages.ruler import BrokenText, Ruler
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from tests.pages.fake_ruler import FakeRuler

STYLE = TextStyle(10.0)
RULERS: list[Ruler] = [FakeRuler(), PangoRuler(FONTS_CONF)]


def test_the_longest_line_is_the_width() -> None:
    """A broken text is as wide as its widest line; no lines have no width."""
    assert BrokenText(("a", "bc"), (1.0, 2.0), Direction.LEFT_TO_RIGHT).width_mm == 2.0
    assert BrokenText((), (), Direction.LEFT_TO_RIGHT).width_mm == 0.0


@pytest.mark.parametrize("ruler", RULERS, ids=["plain", "real"])
@pytest.mark.parametrize("width_mm", [6.0, 15.0, 40.0, 400.0])
@pytest.mark.parametrize(
    "text",
    [
        "",
        "pin",
        "Day dress, printed cotton, with a belt",
        "1234567890" * 4,
        "a\N{NO-BREAK SPACE}b c",
    ],
)
def test_what_every_ruler_promises(ruler: Ruler, text: str, width_mm: float) -> None:
    """No line is wider than asked, and nothing but blanks at the breaks is lost.

    A line alone is at most wider by the kerning of the blank that stood behind it.
    """
    broken = ruler.break_text(text, STYLE, width_mm=width_mm)
    assert len(broken.lines) == len(broken.widths_mm) >= 1
    assert broken.width_mm <= width_mm
    assert "".join(broken.lines).replace(" ", "") == text.replace(" ", "")
    for line, line_mm in zip(broken.lines, broken.widths_mm, strict=True):
        assert ruler.width_mm(line, STYLE) <= line_mm + 0.1
