from __future__ import annotations

from dataclasses import replace

import pytest

from service.geometry import Rect
from service.pages.page import Shade, ShapeBlock
from service.render.proof.symbols import modules_rect
from service.symbols.outline import symbol_path
from tests.render.made import Ink, faults_of, page, symbol, text

pytestmark = [pytest.mark.print, pytest.mark.slow]

SYMBOL = symbol()
WHOLE = page(SYMBOL)


def cover(share_x: float, share_y: float, *, side_mm: float, fill: Shade) -> ShapeBlock:
    """Make a patch at a place inside the symbol, told by its shares of the modules' square."""
    inner = modules_rect(SYMBOL)
    x_mm = inner.x_mm + share_x * inner.width_mm
    y_mm = inner.y_mm + share_y * inner.height_mm
    return ShapeBlock("patch", Rect(x_mm, y_mm, side_mm, side_mm), fill=fill)


def test_another_payload_is_caught(ink: Ink) -> None:
    """A readable symbol that leads elsewhere fails, and both payloads are told."""
    other = symbol("https://collections.example/c/B-043")
    faults = " ".join(faults_of(ink.of(page(other)), WHOLE))
    assert "/B-043" in faults
    assert "/B-042" in faults


@pytest.mark.parametrize(
    ("patch", "fault"),
    [
        pytest.param(
            cover(0.0, 0.0, side_mm=6.0, fill=Shade.BLACK), "says nothing", id="a corner gone"
        ),
        pytest.param(
            cover(0.5, 0.5, side_mm=1.5, fill=Shade.BLACK), "of the wrong tone", id="a dark patch"
        ),
        pytest.param(
            cover(0.5, 0.5, side_mm=1.5, fill=Shade.WHITE), "of the wrong tone", id="a light patch"
        ),
        pytest.param(
            ShapeBlock("patch", Rect(70.5, 35.0, 1.0, 1.0), fill=Shade.GREY),
            "ink in its clear margin",
            id="something in the margin",
        ),
    ],
)
def test_damage_is_caught(ink: Ink, patch: ShapeBlock, fault: str) -> None:
    """Fresh ink has no damage at all, not even such as a decoder would mend."""
    assert fault in " ".join(faults_of(ink.of(page(SYMBOL, patch)), WHOLE))


def test_text_in_the_clear_margin_is_caught(ink: Ink) -> None:
    """A caption that touches the clear margin is told, for it can hide the symbol."""
    whole = page(SYMBOL, text("1 of 2", x_mm=70.0, y_mm=SYMBOL.rect.bottom_mm - 3.0))
    assert "ink in its clear margin" in " ".join(faults_of(ink.of(whole), whole))


@pytest.mark.parametrize("colour", ["#bbb", "#666"], ids=["pale", "grey"])
def test_light_modules_are_caught(ink: Ink, colour: str) -> None:
    """Modules that are grey instead of black are told, even where a decoder still reads them."""
    rect, side = SYMBOL.rect, SYMBOL.symbol.full_side_modules
    drawn = (
        f"<svg viewBox='0 0 {side} {side}' style='left: {rect.x_mm}mm; top: {rect.y_mm}mm;"
        f" width: {rect.width_mm}mm; height: {rect.height_mm}mm'>"
        f"<path fill='{colour}' d='{symbol_path(SYMBOL.symbol)}'/></svg>"
    )
    faults = " ".join(faults_of(ink.of_html(drawn), WHOLE))
    assert "wrong tone" in faults or "too little contrast" in faults


def test_a_symbol_elsewhere_is_caught(ink: Ink) -> None:
    """A symbol moved by its own width is not where the page says."""
    moved = replace(SYMBOL, rect=SYMBOL.rect.moved(-SYMBOL.rect.width_mm, 0.0))
    assert "says nothing" in " ".join(faults_of(ink.of(page(moved)), WHOLE))
