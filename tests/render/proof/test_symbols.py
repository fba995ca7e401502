from __future__ import annotations

from dataclasses import replace

import pytest

from service.geometry import Rect
from service.pages.page import Shade, ShapeBlock
from service.render.proof.symbols import modules_rect
from tests.render.made import page, symbol, text
from tests.render.proof.plated import faults_in, faults_of, plate_of, rewritten

SYMBOL = symbol()
WHOLE = page(SYMBOL)


def cover(share_x: float, share_y: float, *, side_mm: float, fill: Shade) -> ShapeBlock:
    """Make a patch at a place inside the symbol, told by its shares of the modules' square."""
    inner = modules_rect(SYMBOL)
    x_mm = inner.x_mm + share_x * inner.width_mm
    y_mm = inner.y_mm + share_y * inner.height_mm
    return ShapeBlock("patch", Rect(x_mm, y_mm, side_mm, side_mm), fill=fill)


def test_another_payload_is_caught() -> None:
    """A readable symbol that leads elsewhere fails, and both payloads are told."""
    other = symbol("https://collections.example/c/B-043")
    faults = " ".join(faults_of(page(other), WHOLE))
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
def test_damage_is_caught(patch: ShapeBlock, fault: str) -> None:
    """Fresh ink has no damage at all, not even such as a decoder would mend."""
    assert fault in " ".join(faults_of(page(SYMBOL, patch), WHOLE))


def test_text_in_the_clear_margin_is_caught() -> None:
    """A caption that touches the clear margin is told, for it can hide the symbol."""
    whole = page(SYMBOL, text("1 of 2", x_mm=70.0, y_mm=SYMBOL.rect.bottom_mm - 3.0))
    assert "ink in its clear margin" in " ".join(faults_of(whole))


@pytest.mark.parametrize("tone", ["0.73", "0.4"], ids=["pale", "grey"])
def test_light_modules_are_caught(tone: str) -> None:
    """Modules that are grey instead of black are told, even where a decoder still reads them."""
    colour = f"{tone} {tone} {tone} rg".encode()
    plate = rewritten(plate_of(WHOLE), lambda content: content.replace(b"0 0 0 rg", colour))
    faults = " ".join(faults_in(plate, WHOLE))
    assert "wrong tone" in faults or "too little contrast" in faults


def test_modules_of_another_size_are_caught() -> None:
    """A symbol a twentieth smaller than asked for has its modules in the wrong places."""
    small = symbol(module_mm=0.475)
    centred = replace(small, rect=small.rect.moved(0.5, 0.5))
    assert "wrong tone" in " ".join(faults_of(page(centred), WHOLE))


def test_a_symbol_elsewhere_is_caught() -> None:
    """A symbol moved by its own width is not where the page says."""
    moved = replace(SYMBOL, rect=SYMBOL.rect.moved(-SYMBOL.rect.width_mm, 0.0))
    assert "says nothing" in " ".join(faults_of(page(moved), WHOLE))
