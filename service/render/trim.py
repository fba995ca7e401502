"""Trimming: finds the object on a plain background and the box that shows it whole.

Works on a small copy of the picture. The background is a smooth surface, bent at most twice, fitted
to the picture's border: that follows light falling off over a grey card or a white sheet. What
stands out from the surface in colour, in brightness or by a sharp outline is object; a soft grey
darkening is its shadow. Thin bars along an edge and small grey cards in a corner, as photographers
lay beside an object, are left out where they stand apart. In doubt nothing is cut: a background
that is not plain leaves the picture as it is. Numbers without a source were settled by looking at
photos of objects on grey and white, 2026-11-25.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from PIL import Image, ImageChops, ImageFilter, ImageStat

from service.render.backdrop import fit_backdrop

if TYPE_CHECKING:
    from collections.abc import Sequence

Box = tuple[int, int, int, int]
"""Left, top, right, bottom in pixels; right and bottom lie just outside."""

WORKING_SIDE_PX = 160
MARGIN_RATIO = 0.04
LEAST_SIDE_RATIO = 0.10

# Differences are in levels of 0 to 255.
_LEAST_DIFFERENCE = 12
_LEAST_OUTLINE = 14
# A soft shadow takes up to this share of the background's light and keeps its colour.
_SHADOW_RATIO = 0.25
# Marks closer than this many pixels of the small copy are one thing; must be odd.
_JOIN_PX = 5
_SPECK_PIXELS = 4
# A scale bar is this many times as long as thick; shares are of the picture's long side.
_BAR_LENGTHS = 5.0
_BAR_THICK_RATIO = 0.07
_AID_ZONE_RATIO = 0.12
_CARD_RATIO = 0.2
_CARD_FILL_RATIO = 0.85
_GREY_SATURATION = 24


@dataclass(frozen=True, slots=True)
class Region:
    """One connected thing on the small copy: its box and how many pixels of it stand out."""

    box: Box
    pixels: int


def find_object_box(image: Image.Image) -> Box:
    """Give the box of `image` (8-bit RGB) that holds the object with a small margin.

    The box is the whole picture when the background is not plain, when nothing stands out, or when
    less than a tenth of either side would be left.
    """
    whole = (0, 0, *image.size)
    small = _small_copy(image)
    backdrop = fit_backdrop(small)
    if backdrop is None:
        return whole
    regions = find_regions(_mark_object(small, backdrop.surface, backdrop.noise_levels))
    aids = tuple(region for region in regions if is_photographers_aid(region, small))
    objects = tuple(region for region in regions if region not in aids)
    if not objects:
        # What looked like an aid may be a long thin object that lies alone.
        objects, aids = regions, ()
    return _scaled(_framed(objects, aids, small.size), image.size, small.size) or whole


def _small_copy(image: Image.Image) -> Image.Image:
    scale_ratio = min(1.0, WORKING_SIDE_PX / max(image.size))
    size = tuple(max(1, round(side * scale_ratio)) for side in image.size)
    return image.resize((size[0], size[1]), Image.Resampling.BOX, reducing_gap=2.0)


def _mark_object(small: Image.Image, surface: Image.Image, noise_levels: float) -> Image.Image:
    """Give an L image of 255 where the picture is not background and 0 elsewhere."""
    least = round(max(_LEAST_DIFFERENCE, 4 * noise_levels))
    lighter = ImageChops.subtract(small, surface).split()
    darker = ImageChops.subtract(surface, small).split()
    darkest, faintest = _brightest(darker), _faintest(darker)
    shadow = round(_SHADOW_RATIO * ImageStat.Stat(surface.convert("L")).mean[0])
    grey = small.convert("L")
    outline = ImageChops.subtract(
        grey.filter(ImageFilter.MaxFilter(3)), grey.filter(ImageFilter.MinFilter(3))
    )
    evidence = (
        _above(_brightest(lighter), least),
        _above(ImageChops.subtract(darkest, faintest), least),
        _above(faintest, max(shadow, least)),
        _above(outline, max(_LEAST_OUTLINE, least)),
    )
    return _brightest(evidence)


def _brightest(bands: Sequence[Image.Image]) -> Image.Image:
    first, *rest = bands
    for band in rest:
        first = ImageChops.lighter(first, band)
    return first


def _faintest(bands: Sequence[Image.Image]) -> Image.Image:
    first, *rest = bands
    for band in rest:
        first = ImageChops.darker(first, band)
    return first


def _above(band: Image.Image, level: int) -> Image.Image:
    return band.point([255 if value > level else 0 for value in range(256)])


def find_regions(mask: Image.Image) -> tuple[Region, ...]:
    """Give the connected things of an L image of 0 and 255, specks left out."""
    joined = mask.filter(ImageFilter.MaxFilter(_JOIN_PX))
    groups = _connected(_runs(joined))
    regions = (_region(group, mask) for group in groups)
    return tuple(region for region in regions if region.pixels >= _SPECK_PIXELS)


Run = tuple[int, int, int]
"""Row, first column, column after the last."""


def _runs(mask: Image.Image) -> list[list[Run]]:
    width, height = mask.size
    data = mask.tobytes()
    rows = []
    for row in range(height):
        line = data[row * width : (row + 1) * width]
        ends = [0, *(x for x in range(1, width) if line[x] != line[x - 1]), width]
        rows.append([(row, left, right) for left, right in pairwise(ends) if line[left]])
    return rows


def _connected(rows: list[list[Run]]) -> list[list[Run]]:
    """Group runs that touch from row to row."""
    group_of: dict[Run, list[Run]] = {}
    for above, below in pairwise([[], *rows]):
        for run in below:
            group_of[run] = [run]
            for other in above:
                if other[1] <= run[2] and run[1] <= other[2]:
                    _merge(group_of, group_of[other], group_of[run])
    return list({id(group): group for group in group_of.values()}.values())


def _merge(group_of: dict[Run, list[Run]], first: list[Run], second: list[Run]) -> None:
    if first is not second:
        first.extend(second)
        for run in second:
            group_of[run] = first


def _region(group: list[Run], mask: Image.Image) -> Region:
    """Measure a group by the pixels of `mask`, which is not widened."""
    joined = (
        min(left for _, left, _ in group),
        min(row for row, _, _ in group),
        max(right for _, _, right in group),
        max(row for row, _, _ in group) + 1,
    )
    own = Image.new("L", mask.size)
    for row, left, right in group:
        own.paste(255, (left, row, right, row + 1))
    own = ImageChops.darker(own, mask)
    return Region(own.getbbox() or joined, own.histogram()[255])


def is_photographers_aid(region: Region, small: Image.Image) -> bool:
    """Tell whether a region of the small copy is a scale bar or a grey card beside the object."""
    left, top, right, bottom = region.box
    width, height = right - left, bottom - top
    gaps = (left, top, small.width - right, small.height - bottom)
    long_side = max(small.size)
    thick, length = sorted((width, height))
    near_edge = min(gaps[1::2] if width >= height else gaps[::2]) <= _AID_ZONE_RATIO * long_side
    bar = near_edge and length >= _BAR_LENGTHS * thick and thick <= _BAR_THICK_RATIO * long_side
    in_corner = max(min(gaps[::2]), min(gaps[1::2])) <= _AID_ZONE_RATIO * long_side
    card = in_corner and length <= _CARD_RATIO * long_side and _is_grey_card(region, small)
    return bar or card


def _is_grey_card(region: Region, small: Image.Image) -> bool:
    """A grey card is full to its corners and has no colour."""
    left, top, right, bottom = region.box
    full = region.pixels >= _CARD_FILL_RATIO * (right - left) * (bottom - top)
    saturation = small.crop(region.box).convert("HSV").getchannel("S")
    return full and ImageStat.Stat(saturation).median[0] <= _GREY_SATURATION


def _framed(objects: Sequence[Region], aids: Sequence[Region], size: tuple[int, int]) -> Box | None:
    """Put the margin round the objects, short of an aid where one lies inside the margin."""
    if not objects:
        return None
    tight = (
        min(region.box[0] for region in objects),
        min(region.box[1] for region in objects),
        max(region.box[2] for region in objects),
        max(region.box[3] for region in objects),
    )
    margin = math.ceil(MARGIN_RATIO * max(tight[2] - tight[0], tight[3] - tight[1]))
    left, top = max(0, tight[0] - margin), max(0, tight[1] - margin)
    right, bottom = min(size[0], tight[2] + margin), min(size[1], tight[3] + margin)
    for aid in aids:
        if aid.box[1] >= tight[3]:
            bottom = min(bottom, aid.box[1])
        elif aid.box[3] <= tight[1]:
            top = max(top, aid.box[3])
        elif aid.box[0] >= tight[2]:
            right = min(right, aid.box[0])
        elif aid.box[2] <= tight[0]:
            left = max(left, aid.box[2])
    return (left, top, right, bottom)


def _scaled(box: Box | None, size: tuple[int, int], small: tuple[int, int]) -> Box | None:
    """Bring a box of the small copy to full size; None when too little of a side is left."""
    if box is None:
        return None
    across, down = size[0] / small[0], size[1] / small[1]
    left, top = math.floor(box[0] * across), math.floor(box[1] * down)
    right, bottom = math.ceil(box[2] * across), math.ceil(box[3] * down)
    wide = right - left >= LEAST_SIDE_RATIO * size[0]
    tall = bottom - top >= LEAST_SIDE_RATIO * size[1]
    return (left, top, min(right, size[0]), min(bottom, size[1])) if wide and tall else None
