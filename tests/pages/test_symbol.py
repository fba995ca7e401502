from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.compose.head import compose_head
from service.errors import ModuleTooSmallError
from service.pages.symbol import dark_part, set_symbol
from service.symbols.symbol import QUIET_ZONE_MODULES, Level
from tests.contents.made import MUSEUM, objects, packing

HEAD = replace(compose_head(packing(objects(1)), MUSEUM), query="r=3&k=BCDF")


def test_the_dark_part_stands_where_it_was_asked() -> None:
    """The corner named is that of the dark modules; the clear margin lies around it."""
    block = set_symbol(HEAD, right_mm=90, top_mm=8, space_mm=20)
    dark = dark_part(block)
    assert dark.right_mm == pytest.approx(90)
    assert dark.y_mm == pytest.approx(8)
    clear_mm = QUIET_ZONE_MODULES * block.module_mm
    assert dark.x_mm - block.rect.x_mm == pytest.approx(clear_mm)
    assert block.rect.bottom_mm - dark.bottom_mm == pytest.approx(clear_mm)
    assert dark.width_mm == pytest.approx(block.symbol.side_modules * block.module_mm)


def test_the_symbol_says_the_address_with_its_query() -> None:
    """What is read aloud is what a telephone reads."""
    block = set_symbol(HEAD, right_mm=90, top_mm=8, space_mm=20, level=Level.Q)
    assert block.symbol.payload == "https://collections.example/c/B-042?r=3&k=BCDF"
    assert block.alt == f"QR code: {block.symbol.payload}"
    assert block.symbol.level is Level.Q


def test_modules_are_whole_dots_and_never_too_small() -> None:
    """At 600 dots to the inch a module is a whole number of dots, 0.40 mm at least."""
    dots = set_symbol(HEAD, right_mm=90, top_mm=8, space_mm=20).module_mm / 25.4 * 600
    assert dots == pytest.approx(round(dots))
    with pytest.raises(ModuleTooSmallError, match="is needed"):
        set_symbol(HEAD, right_mm=90, top_mm=8, space_mm=10)
