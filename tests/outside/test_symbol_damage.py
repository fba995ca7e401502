"""Printed symbols against the damage that ISO/IEC 18004 says they bear.

The standard gives the share of codewords that can be restored: about 15 % at level M and 25 % at
level Q. A patch a third or so of that share of the area, away from the finder patterns, must leave
a symbol readable; so must a print that is blurred, slightly turned, or scanned coarsely. The
decoder is zxing-cpp, which shares no code with our encoder.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator

import pytest
import zxingcpp
from PIL import Image, ImageDraw, ImageFilter

from service.render.raster import opened, raster_of
from service.symbols.symbol import Level
from tests.render.made import Ink, ink_process, page, symbol

pytestmark = [pytest.mark.print, pytest.mark.slow]

PAYLOADS = {
    "number": "B-042",
    "address": "https://collections.example/c/B-042",
    "scan address": "https://collections.example/c/1987.412.9?r=7&k=KMTF",
}
RESOLUTIONS_DPI = (300, 203, 150)
PATCH_RATIO = {Level.M: 0.05, Level.Q: 0.10}
SMALLEST_SIDE_MODULES = 21
SMALLEST_SHARE = 0.5
"""A version 1 symbol gives less than half of its 441 modules to codewords (208), so that a patch of
the same share of its area hits twice the share of them: it is tried with half the patch."""
FINDER_MODULES = 8
"""A finder pattern with its separator (ISO/IEC 18004): 8 modules from each of three corners."""
BLUR_MODULES = 0.3
PLACES = {"middle": (0.5, 0.5), "right": (1.0, 0.5), "below": (0.5, 1.0), "corner": (1.0, 1.0)}

Damage = Callable[[Image.Image], Image.Image]


@pytest.fixture(scope="module")
def ink() -> Iterator[Ink]:
    """Give a process that draws."""
    with ink_process() as made:
        yield made


@pytest.fixture(scope="module", params=[Level.M, Level.Q], ids=["level M", "level Q"])
def level(request: pytest.FixtureRequest) -> Level:
    """Take each level that cards use."""
    return Level(request.param)


@pytest.fixture(scope="module", params=PAYLOADS)
def payload(request: pytest.FixtureRequest) -> str:
    """Take each kind of payload."""
    return PAYLOADS[str(request.param)]


@pytest.fixture(scope="module")
def printed(ink: Ink, payload: str, level: Level) -> dict[int, Image.Image]:
    """Print the symbol once and look at it with each resolution, clear margin and all."""
    block = symbol(payload, level=level, module_mm=0.42)
    with opened(ink.of(page(block))) as pdf:
        rasters = {
            dpi: raster_of(pdf[0], resolution_dpi=dpi, rect=block.rect) for dpi in RESOLUTIONS_DPI
        }
    return {dpi: raster.crop(block.rect) for dpi, raster in rasters.items()}


def read(image: Image.Image) -> list[str]:
    """Give the texts of all symbols found."""
    return [found.text for found in zxingcpp.read_barcodes(image)]


def modules_box(image: Image.Image, side_modules: int) -> tuple[float, float]:
    """Give where the modules begin, and their whole width, in dots."""
    dots_per_module = image.width / (side_modules + 8)
    return 4 * dots_per_module, side_modules * dots_per_module


def test_fresh_print_is_read(printed: dict[int, Image.Image], payload: str) -> None:
    """At 300, 203 and 150 dpi the decoder reads the payload and nothing else."""
    for dpi, image in printed.items():
        assert (dpi, read(image)) == (dpi, [payload])


def test_blurred_print_is_read(printed: dict[int, Image.Image], payload: str, level: Level) -> None:
    """A camera a little out of focus: edges blurred by a third of a module."""
    side_modules = symbol(payload, level=level).symbol.side_modules
    for dpi, image in printed.items():
        _, width = modules_box(image, side_modules)
        radius = BLUR_MODULES * width / side_modules
        assert (dpi, read(image.filter(ImageFilter.GaussianBlur(radius)))) == (dpi, [payload])


@pytest.mark.parametrize("angle_deg", [2.0, -2.0])
def test_turned_print_is_read(
    printed: dict[int, Image.Image], payload: str, angle_deg: float
) -> None:
    """Stuck on askew by two degrees."""
    for dpi, image in printed.items():
        turned = image.rotate(angle_deg, Image.Resampling.BICUBIC, expand=True, fillcolor=255)
        assert (dpi, read(turned)) == (dpi, [payload])


@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize("tone", [0, 255], ids=["dark", "light"])
def test_a_patch_is_mended(
    printed: dict[int, Image.Image], payload: str, level: Level, *, place: str, tone: int
) -> None:
    """A square blot, or as much rubbed off: 5 % of the area at level M, 10 % at level Q."""
    side_modules = symbol(payload, level=level).symbol.side_modules
    share = SMALLEST_SHARE if side_modules == SMALLEST_SIDE_MODULES else 1.0
    patch_modules = math.sqrt(share * PATCH_RATIO[level]) * side_modules
    free = (FINDER_MODULES, side_modules - patch_modules)
    across, down = (free[0] + part * (free[1] - free[0]) for part in PLACES[place])
    # Off the finder patterns: those lie in every corner but the lower right one.
    assert across + patch_modules <= side_modules - FINDER_MODULES or down >= FINDER_MODULES
    for dpi, image in printed.items():
        start, width = modules_box(image, side_modules)
        dots = width / side_modules
        left, top = start + across * dots, start + down * dots
        damaged = image.copy()
        end = (left + patch_modules * dots, top + patch_modules * dots)
        ImageDraw.Draw(damaged).rectangle((left, top, *end), fill=tone)
        assert (dpi, read(damaged)) == (dpi, [payload])
