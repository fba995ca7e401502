from __future__ import annotations

from dataclasses import replace

import pytest

from service.geometry import Rect
from service.pages.page import Block, Shade, ShapeBlock
from tests.render.made import page, text
from tests.render.proof.plated import faults_in, faults_of, plate_of, rewritten


def test_text_nobody_can_see_is_caught() -> None:
    """White letters on white paper, and letters under a panel, are in the file but not in print."""
    block = text("Brass")
    white = replace(block, style=replace(block.style, shade=Shade.WHITE))
    panel = ShapeBlock("panel", Rect(4.0, 4.0, 30.0, 8.0), fill=Shade.BLACK)
    for drawn in (page(white), page(block, panel)):
        assert "'Brass' is in the file but 5 of its signs are not to be seen" in " ".join(
            faults_of(drawn, page(block))
        )


@pytest.mark.parametrize("shade", list(Shade), ids=str)
def test_a_covered_end_is_caught(shade: Shade) -> None:
    """A patch over the last three signs of a line is told, whatever its tone."""
    block = text("B-042")
    patch = ShapeBlock("patch", Rect(8.7, 4.0, 10.0, 7.0), fill=shade)
    assert "not to be seen" in " ".join(faults_of(page(block, patch), page(block)))


@pytest.mark.parametrize("shade", [Shade.BLACK, Shade.GREY], ids=str)
@pytest.mark.parametrize("size_pt", [4.5, 5.5, 7.0])
def test_every_sign_of_small_type_is_seen(size_pt: float, shade: Shade) -> None:
    """Full stops, thin letters and strokes of the smallest type are seen wherever they stand."""
    line = "il1.,:;'·-\u2013|/\\ Łódź 箱は「重」い・ x\u0307"
    blocks = [
        text(line, x_mm=3.0 + step / 7, y_mm=2.5 + 5 * step, size_pt=size_pt, width_mm=90.0)
        for step in range(10)
    ]
    shaded = [replace(one, style=replace(one.style, shade=shade)) for one in blocks]
    assert faults_of(page(*shaded)) == []


@pytest.mark.parametrize("size_pt", [4.5, 5.0, 5.5, 6.0, 6.5, 7.0, 8.0])
def test_strokes_as_far_apart_as_dots_are_seen(size_pt: float) -> None:
    """Rows of upright strokes may fall on the raster so that all columns look alike."""
    blocks = [
        text(line, x_mm=4.0 + step / 9, y_mm=3.0 + 4.5 * step, size_pt=size_pt, width_mm=90.0)
        for step, line in enumerate(['5"" x 2"""', "|||||||", "IIIllliii", "'''''", "......"] * 2)
    ]
    assert faults_of(page(*blocks)) == []


def test_white_text_on_a_black_panel_is_seen() -> None:
    """A heading in paper colour needs only something dark behind it."""
    block = text("Brass")
    white = replace(block, style=replace(block.style, shade=Shade.WHITE))
    panel = ShapeBlock("panel", Rect(4.0, 4.0, 30.0, 8.0), fill=Shade.BLACK)
    assert faults_of(page(panel, white)) == []


@pytest.mark.parametrize("tone", [0.5, 0.95, 1.0])
def test_pale_text_is_caught(tone: float) -> None:
    """What is nearly as light as the paper is not to be seen; a middle grey is."""
    colour = f"{tone} {tone} {tone} rg".encode()
    plate = plate_of(page(text("B-042")))
    pale = rewritten(plate, lambda content: content.replace(b"0 0 0 rg", colour))
    assert bool(faults_in(pale, page(text("B-042")))) is (tone > 0.5)


@pytest.mark.parametrize(
    ("block", "fault"),
    [
        pytest.param(
            ShapeBlock("rule", Rect(50.0, 58.5, 20.0, 0.5), fill=Shade.BLACK),
            "ink stands within 2 mm of the edge",
            id="a rule in the strip",
        ),
        pytest.param(
            ShapeBlock("rule", Rect(1.9, 20.0, 0.2, 20.0), fill=Shade.BLACK),
            "ink stands within 2 mm of the edge",
            id="a rule a tenth of a millimetre in the strip",
        ),
        pytest.param(
            ShapeBlock("panel", Rect(90.0, 5.0, 12.0, 5.0), fill=Shade.BLACK),
            "reaches out of the page",
            id="a panel over the edge",
        ),
        pytest.param(
            text("1987.412.9 and its case", x_mm=80.0), "reaches out of the page", id="a long line"
        ),
    ],
)
def test_ink_at_the_edge_is_caught(block: Block, fault: str) -> None:
    """Nothing is printed over the edge, nor in the strip where a die or a knife may slip."""
    assert fault in " ".join(faults_of(page(block)))


@pytest.mark.parametrize(
    "rect",
    [
        pytest.param(Rect(2.0, 2.0, 96.0, 0.5), id="above"),
        pytest.param(Rect(2.0, 57.5, 96.0, 0.5), id="below"),
        pytest.param(Rect(97.5, 2.0, 0.5, 56.0), id="right"),
    ],
)
def test_ink_may_reach_to_the_strip(rect: Rect) -> None:
    """A rule that ends where the strip begins is no fault."""
    assert faults_of(page(ShapeBlock("rule", rect, fill=Shade.BLACK))) == []


def test_the_strip_is_as_wide_as_asked() -> None:
    """A rule 1.5 mm from the edge passes where 1 mm is enough."""
    whole = page(ShapeBlock("rule", Rect(50.0, 58.0, 20.0, 0.5), fill=Shade.BLACK))
    assert faults_of(whole)
    assert faults_in(plate_of(whole), whole, clear_edge_mm=1.0) == []
