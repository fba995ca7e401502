"""The drawn marks, measured on their raster, against ISO 3864-1, the GHS and WCAG 2.1."""

from __future__ import annotations

import base64
import io
import itertools
import re
import subprocess
import sys
import tempfile
import tomllib
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
import pypdfium2
import pytest

from service.legibility import sign_distance_mm

if TYPE_CHECKING:
    from collections.abc import Iterator

    from numpy.typing import NDArray

    Pixels = NDArray[np.int16]
    Mask = NDArray[np.bool_]

TEMPLATES = Path(__file__).resolve().parents[2] / "templates"
MARKS = tomllib.loads((TEMPLATES / "pictograms" / "pictograms.toml").read_text("utf-8"))["mark"]
CODES = [mark["code"] for mark in MARKS]
GEOMETRIES = {
    "warning": "ISO 3864-1",
    "prohibition": "ISO 3864-1",
    "mandatory": "ISO 3864-1",
    "chemical": "GHS",
}

BLACK, WHITE = (0x00, 0x00, 0x00), (0xFF, 0xFF, 0xFF)
YELLOW, RED, BLUE = (0xF9, 0xA8, 0x00), (0x9B, 0x24, 0x23), (0x00, 0x53, 0x87)

SIDE_MM = 8.0
FINE_DPI, COARSE_DPI, OFFICE_DPI = 1270, 203, 300
FINE_PX_PER_MM = FINE_DPI / 25.4
THINNEST_MM = 0.35
# What a round brush 0.35 mm wide cannot reach in the tip of a sharp corner of about 35 degrees.
CORNER_MM2 = 0.055
# Two marks must differ by this share of what either draws, wherever one is laid on the other (own
# choice). A print of the same mark half a dot further on already differs by up to a quarter.
CLEAR_SHARE = 1 / 3
MISPLACED_SHARE = 0.27
SHIFTS_PX = [(down, right) for down in range(-2, 3) for right in range(-2, 3)]

# fontconfig reads its variables once, when Pango is loaded: hence a process of its own.
RENDER = """
import os, sys
os.environ["FONTCONFIG_FILE"], os.environ["XDG_CACHE_HOME"] = sys.argv[1:]
from weasyprint import HTML
HTML(string=sys.stdin.read()).write_pdf(sys.stdout.buffer)
"""
PAGE = f"""<style>@page {{ size: {SIDE_MM}mm; margin: 0 }} * {{ margin: 0 }}
img {{ display: block; width: {SIDE_MM}mm; break-after: page }}
img:last-child {{ break-after: auto }}</style>"""


def codes_of(family: str) -> list[str]:
    """List the codes of one family."""
    return [mark["code"] for mark in MARKS if mark["family"] == family]


def source_of(code: str) -> str:
    """Read the drawing of a mark."""
    return (TEMPLATES / "pictograms" / f"{code}.svg").read_text("utf-8")


@cache
def printed() -> bytes:
    """Print every mark 8 mm wide, a page each, in the order of the table."""
    images = [base64.b64encode(source_of(code).encode()).decode() for code in CODES]
    body = "".join(f'<img src="data:image/svg+xml;base64,{image}">' for image in images)
    with tempfile.TemporaryDirectory() as cache_home:
        done = subprocess.run(
            [sys.executable, "-c", RENDER, str(TEMPLATES / "fonts" / "fonts.conf"), cache_home],
            input=(PAGE + body).encode(),
            capture_output=True,
            check=True,
        )
    return done.stdout


@cache
def raster(code: str, dpi: int) -> Pixels:
    """Give the pixels of a printed mark, with a white margin of half a millimetre all round."""
    document = pypdfium2.PdfDocument(io.BytesIO(printed()))
    page = document[CODES.index(code)]
    picture = page.render(scale=dpi / 72).to_pil().convert("RGB")
    document.close()
    margin = round(dpi / 25.4 / 2)
    return np.pad(
        np.asarray(picture, dtype=np.int16),
        ((margin, margin), (margin, margin), (0, 0)),
        constant_values=255,
    )


def is_colour(pixels: Pixels, colour: tuple[int, int, int]) -> Mask:
    """Mark the pixels that have a colour, give or take the rounding of the renderer."""
    return np.asarray((np.abs(pixels - np.array(colour)) <= 4).all(axis=2))


def one_bit(pixels: Pixels) -> Mask:
    """Mark the ink of a black printer: what is darker than middle grey (ITU-R BT.601 luma)."""
    return np.asarray(pixels @ np.array([0.299, 0.587, 0.114]) < 127.5)


def relative_luminance(colour: tuple[int, int, int]) -> float:
    """Compute the relative luminance as WCAG 2.1 defines it."""
    parts = [value / 255 for value in colour]
    linear = [p / 12.92 if p <= 0.03928 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast_ratio(one: tuple[int, int, int], other: tuple[int, int, int]) -> float:
    """Compute the contrast ratio as WCAG 2.1 defines it."""
    darker, lighter = sorted((relative_luminance(one), relative_luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def runs(line: Mask) -> list[int]:
    """Give the lengths in pixels of the unbroken true stretches along a line."""
    return [len(list(group)) for value, group in itertools.groupby(line.tolist()) if value]


def spread(mask: Mask, offsets: list[tuple[int, int]]) -> Mask:
    """Dilate a mask by a brush that is given as offsets (down, right)."""
    height, width = mask.shape
    out = np.zeros_like(mask)
    for down, right in offsets:
        to_rows = slice(max(0, down), height + min(0, down))
        to_columns = slice(max(0, right), width + min(0, right))
        from_rows = slice(max(0, -down), height + min(0, -down))
        from_columns = slice(max(0, -right), width + min(0, -right))
        out[to_rows, to_columns] |= mask[from_rows, from_columns]
    return out


def missed_by_brush(mask: Mask) -> Mask:
    """Mark what a round brush 0.35 mm wide cannot paint without leaving the mask."""
    # Half a pixel is the raster's own share.
    radius_px = THINNEST_MM * FINE_PX_PER_MM / 2 - 0.5
    reach = range(-int(radius_px), int(radius_px) + 1)
    brush = [(y, x) for y in reach for x in reach if y * y + x * x <= radius_px**2]
    return mask & ~spread(~spread(~mask, brush), brush)


def patch_areas_mm2(mask: Mask) -> Iterator[float]:
    """Give the area of each connected patch (by edges) of a mask."""
    left = {(int(y), int(x)) for y, x in np.argwhere(mask)}
    while left:
        patch, edge = 0, [left.pop()]
        while edge:
            y, x = edge.pop()
            patch += 1
            near = {(y + 1, x), (y - 1, x), (y, x + 1), (y, x - 1)} & left
            left -= near
            edge.extend(near)
        yield patch / FINE_PX_PER_MM**2


def euler_number(ink: Mask) -> int:
    """Count the patches of a mask less the holes in them, by the corners of its outline."""
    cells = np.pad(ink, 1).astype(int)
    one, other = cells[:-1, :-1] + cells[1:, 1:], cells[1:, :-1] + cells[:-1, 1:]
    corners = one + other
    crossings = (corners == 2) & (one != 1)
    return int((corners == 1).sum() - (corners == 3).sum() - 2 * crossings.sum()) // 4


def symbols(prints: dict[str, Mask]) -> dict[str, Mask]:
    """Give what each mark draws within the frame its family shares: white in a disc, else ink."""
    drawn = {}
    for family in {mark["family"] for mark in MARKS}:
        codes = codes_of(family)
        frame = np.logical_and.reduce([prints[code] for code in codes])
        ground = np.logical_or.reduce([prints[code] for code in codes])
        for code in codes:
            ink = prints[code]
            drawn[code] = ground & ~ink if family == "mandatory" else ink & ~frame
    return drawn


def differing_share(one: Mask, other: Mask) -> float:
    """Give the least share by which two drawings differ, moved up to two dots either way."""
    moved = (np.roll(other, shift, (0, 1)) for shift in SHIFTS_PX)
    return min(float((one ^ each).sum() / (one | each).sum()) for each in moved)


def printed_at(code: str, *, offset_px: int) -> Mask:
    """Print a mark in one bit at 203 dpi, so many quarters of a dot down and to the right."""
    fine = raster(code, 4 * COARSE_DPI) @ np.array([0.299, 0.587, 0.114])
    fine = np.pad(fine, ((offset_px, 4), (offset_px, 4)), constant_values=255)
    rows, columns = (length // 4 for length in fine.shape)
    dots = fine[: rows * 4, : columns * 4].reshape(rows, 4, columns, 4).mean((1, 3))
    return np.asarray(dots < 127.5)


def test_the_table_and_the_folder_agree() -> None:
    """Each mark has words, a meaning of one sentence, a family and a drawing, and none has two."""
    assert sorted(CODES) == sorted(path.stem for path in (TEMPLATES / "pictograms").glob("*.svg"))
    assert len({mark["words"] for mark in MARKS}) == len(MARKS)
    assert all(mark["meaning"].endswith(".") and mark["meaning"].count(".") == 1 for mark in MARKS)
    named = [mark for mark in MARKS if mark["family"] in GEOMETRIES]
    assert all(mark["geometry"] == GEOMETRIES[mark["family"]] for mark in named)


@pytest.mark.parametrize("code", CODES)
def test_drawings_are_plain_filled_shapes(code: str) -> None:
    """A drawing is filled shapes alone: no text, style, stroke, gradient or reference."""
    source = source_of(code)
    assert 'viewBox="0 0 24 24"' in source
    assert set(re.findall(r"<(\w+)", source)) <= {"svg", "path", "circle", "rect"}
    assert not re.search(r"style|stroke|href|url\(|transform|opacity", source)
    shades = {
        f"#{red:02X}{green:02X}{blue:02X}" for red, green, blue in (BLACK, WHITE, YELLOW, RED, BLUE)
    }
    assert set(re.findall(r'fill="([^"]+)"', source)) <= shades


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.parametrize("code", codes_of("warning"))
def test_warning_marks_are_triangles_half_yellow(code: str) -> None:
    """ISO 3864-1: yellow is at least half of an equilateral triangle within a black band."""
    pixels = raster(code, FINE_DPI)
    yellow, black = is_colour(pixels, YELLOW), is_colour(pixels, BLACK)
    assert yellow.sum() / (yellow | black).sum() >= 0.5
    rows, columns = np.nonzero(~is_colour(pixels, WHITE))
    # Corners rounded by 0.05 of the base take 0.05 off the height and 0.0732 off the width.
    base_px = np.ptp(columns) / (1 - 0.0732)
    assert np.ptp(rows) == pytest.approx(base_px * (3**0.5 / 2 - 0.05), rel=0.01)
    band_px = runs(black[:, round(columns.mean() - base_px / 4)])[-1]
    height_px = base_px * 3**0.5 / 2
    # The raster counts whole pixels only.
    assert 0.06 * height_px - 1 <= band_px <= 0.07 * height_px + 1


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.parametrize("code", codes_of("prohibition"))
def test_prohibition_marks_are_ring_and_bar(code: str) -> None:
    """ISO 3864-1: ring 0.10, bar 0.08 of the diameter, falling to the right; red from 35 %."""
    pixels = raster(code, FINE_DPI)
    red = is_colour(pixels, RED)
    rows, columns = np.nonzero(red)
    diameter_px = np.ptp(columns) + 1
    assert np.ptp(rows) + 1 == pytest.approx(diameter_px, abs=2)
    assert runs(red[round(rows.mean())])[0] / diameter_px == pytest.approx(0.10, abs=0.005)
    rising = red[::-1].diagonal()
    assert runs(rising)[1] * 2**0.5 / diameter_px == pytest.approx(0.08, abs=0.005)
    assert red.diagonal()[red.shape[0] // 4 : -red.shape[0] // 4].all()
    assert red.sum() / (np.pi / 4 * diameter_px**2) >= 0.35


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.parametrize("code", codes_of("mandatory"))
def test_mandatory_marks_are_half_blue(code: str) -> None:
    """ISO 3864-1: blue is at least half of the disc, and the rest is white."""
    pixels = raster(code, FINE_DPI)
    blue = is_colour(pixels, BLUE)
    diameter_px = np.ptp(np.nonzero(blue)[1]) + 1
    assert blue.sum() / (np.pi / 4 * diameter_px**2) >= 0.5
    assert not is_colour(pixels, BLACK).any()


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.parametrize("code", codes_of("chemical"))
def test_chemical_marks_are_red_diamonds(code: str) -> None:
    """GHS 1.4.10: a black symbol on white in a red square on its point, clear of the frame."""
    pixels = raster(code, FINE_DPI)
    red, black = is_colour(pixels, RED), is_colour(pixels, BLACK)
    rows, columns = np.nonzero(red)
    middle = (np.ptp(rows) / 2 + rows.min(), np.ptp(columns) / 2 + columns.min())
    out_px = np.abs(np.indices(red.shape) - np.array(middle)[:, None, None]).sum(axis=0)
    assert np.ptp(rows) == pytest.approx(np.ptp(columns), abs=2)
    # The rounding of its corners takes a tenth of a millimetre off its width, none off its sides.
    assert out_px[red].max() <= np.ptp(columns) / 2 + 0.1 * FINE_PX_PER_MM
    assert np.ptp(columns) >= 0.95 * SIDE_MM * FINE_PX_PER_MM
    # The GHS gives its frame no width: here half a millimetre (own choice), give or take a pixel.
    width_px = (out_px[red].max() - out_px[red].min()) / 2**0.5
    assert width_px >= 0.5 * FINE_PX_PER_MM - 1
    gap_px = (out_px[red].min() - out_px[black].max()) / 2**0.5
    assert gap_px >= THINNEST_MM * FINE_PX_PER_MM - 1


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.parametrize("code", codes_of("handling") + codes_of("panel"))
def test_other_marks_are_plain_black(code: str) -> None:
    """ISO 780: the marks of package care are black on the bare ground."""
    assert re.findall(r'fill="#(?!000000|FFFFFF)', source_of(code)) == []
    assert 0.1 <= one_bit(raster(code, COARSE_DPI)).mean() <= 0.5


@pytest.mark.parametrize(
    ("ink", "ground", "ratio"),
    [
        pytest.param(BLACK, WHITE, 21.0, id="band on paper"),
        pytest.param(BLACK, YELLOW, 10.63, id="symbol on yellow"),
    ],
)
def test_contrast(ink: tuple[int, int, int], ground: tuple[int, int, int], ratio: float) -> None:
    """The formula of WCAG 2.1 gives the published figures for our colours."""
    assert contrast_ratio(ink, ground) == pytest.approx(ratio, abs=0.01)


@pytest.mark.parametrize("ground", [RED, BLUE], ids=["red", "blue"])
def test_colours_stand_out_from_paper(ground: tuple[int, int, int]) -> None:
    """Red and blue reach the 3 to 1 that WCAG 2.1 asks of graphical objects (1.4.11)."""
    assert contrast_ratio(ground, WHITE) >= 3


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.parametrize("code", CODES)
def test_lines_and_gaps_are_wide_enough(code: str) -> None:
    """At 8 mm no line and no gap is thinner than 0.35 mm, the tips of corners apart."""
    ink = one_bit(raster(code, FINE_DPI))
    assert [area for area in patch_areas_mm2(missed_by_brush(ink)) if area > CORNER_MM2] == []
    assert [area for area in patch_areas_mm2(missed_by_brush(~ink)) if area > CORNER_MM2] == []


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.parametrize("code", CODES)
@pytest.mark.parametrize("dpi", [COARSE_DPI, OFFICE_DPI])
def test_no_line_breaks_and_no_gap_closes(code: str, dpi: int) -> None:
    """In one bit, 8 mm wide, a mark has the patches and holes that it has when drawn finely."""
    meant = euler_number(one_bit(raster(code, FINE_DPI)))
    assert euler_number(one_bit(raster(code, dpi))) == meant


@pytest.mark.print
@pytest.mark.slow
def test_every_two_marks_differ_clearly() -> None:
    """In one bit at 203 dpi, 8 mm wide, any two marks differ in a third of what they draw.

    Within a family the symbols are compared, without their frame; else the whole marks. The closest
    are ask-first and protective-clothing (0.35), mask and eye-protection (0.38), ask-first and
    read-record (0.41).
    """
    prints = {code: one_bit(raster(code, COARSE_DPI)) for code in CODES}
    drawn = symbols(prints)
    families = {mark["code"]: mark["family"] for mark in MARKS}
    alike = []
    for one, other in itertools.combinations(CODES, 2):
        compared = drawn if families[one] == families[other] else prints
        if differing_share(compared[one], compared[other]) < CLEAR_SHARE:
            alike.append((one, other))
    assert alike == []


@pytest.mark.print
@pytest.mark.slow
def test_the_printer_alone_makes_no_such_difference() -> None:
    """The same mark half a dot further on stays below what parts two marks."""
    here = symbols({code: printed_at(code, offset_px=0) for code in CODES})
    there = symbols({code: printed_at(code, offset_px=2) for code in CODES})
    shares = {code: differing_share(here[code], there[code]) for code in CODES}
    assert {code: share for code, share in shares.items() if share > MISPLACED_SHARE} == {}
    assert MISPLACED_SHARE < CLEAR_SHARE


def test_how_far_a_mark_carries() -> None:
    """ISO 3864-1, as EN 1838 uses it: lit from outside, a triangle 25 mm high carries 2.5 m."""
    assert sign_distance_mm(25.0) == pytest.approx(2500.0)
