"""Trimming: finds the object on a plain background and the box that shows it whole.

Works on a small copy of the picture. The background is a smooth surface, bent at most twice, fitted
to the picture's border: that follows light falling off over a grey card or a white sheet. What
stands out from the surface in colour, in brightness or by a sharp outline is object; a soft grey
darkening is its shadow. A black and white scale bar or a small grey card, as photographers lay
beside an object, is left out where it stands apart. In doubt nothing is cut: a background that is
not plain leaves the picture as it is. Numbers without a source were settled by looking at photos of
objects on grey and white, 2026-11-25.
"""

from __future__ import annotations

import math
from functools import reduce
from typing import TYPE_CHECKING

from PIL import Image, ImageChops, ImageFilter, ImageStat

from service.render.pictures.backdrop import fit_backdrop
from service.render.pictures.regions import Box, Region, find_regions

if TYPE_CHECKING:
    from collections.abc import Sequence

WORKING_SIDE_PX = 160
MARGIN_RATIO = 0.04
LEAST_SIDE_RATIO = 0.10

# Differences are in levels of 0 to 255.
_LEAST_DIFFERENCE = 8
_LEAST_OUTLINE = 10
# A soft shadow takes up to this share of the background's light and keeps its colour.
_SHADOW_RATIO = 0.33
# A scale bar is at least this many times as long as thick, full to its corners, without colour, of
# light and dark parts, and small beside the object. Shares are of the picture's long side.
_BAR_LENGTHS = 4.5
_BAR_THICK_RATIO = 0.08
_BAR_FILL_RATIO = 0.7
_BAR_CONTRAST = 100
_AID_PIXELS_RATIO = 0.4
# What lies so near a bar or card, in pixels of the small copy, is its own outline or shadow.
_CRUMB_PX = 2
# A grey card is a full rectangle without colour in a corner.
_CARD_ZONE_RATIO = 0.12
_CARD_RATIO = 0.2
_CARD_FILL_RATIO = 0.85
_GREY_SATURATION = 40


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
    aids = _photographers_aids(regions, small)
    objects = tuple(region for region in regions if region not in aids)
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
    return reduce(ImageChops.lighter, bands)


def _faintest(bands: Sequence[Image.Image]) -> Image.Image:
    return reduce(ImageChops.darker, bands)


def _above(band: Image.Image, level: int) -> Image.Image:
    return band.point([255 if value > level else 0 for value in range(256)])


def _photographers_aids(regions: Sequence[Region], small: Image.Image) -> tuple[Region, ...]:
    """Give the scale bars and grey cards that lie beside something larger, crumbs included."""
    most = _AID_PIXELS_RATIO * max((region.pixels for region in regions), default=0)
    aids = [region for region in regions if region.pixels <= most and _is_aid(region, small)]
    return tuple(region for region in regions if any(_lies_at(region, aid) for aid in aids))


def _is_aid(region: Region, small: Image.Image) -> bool:
    shaped = _is_scale_bar(region, small) or _is_grey_card(region, small)
    return shaped and _is_without_colour(region, small)


def _lies_at(region: Region, aid: Region) -> bool:
    """Tell whether a region lies in the box of another, or is a part of its outline."""
    left, top, right, bottom = region.box
    near = _CRUMB_PX
    return (
        left >= aid.box[0] - near
        and top >= aid.box[1] - near
        and right <= aid.box[2] + near
        and bottom <= aid.box[3] + near
    )


def _is_without_colour(region: Region, small: Image.Image) -> bool:
    saturation = small.crop(region.box).convert("HSV").getchannel("S")
    return ImageStat.Stat(saturation).median[0] <= _GREY_SATURATION


def _is_scale_bar(region: Region, small: Image.Image) -> bool:
    thick, length = sorted(region.sides)
    darkest, lightest = ImageStat.Stat(small.crop(region.box).convert("L")).extrema[0]
    return (
        thick <= _BAR_THICK_RATIO * max(small.size)
        and length >= _BAR_LENGTHS * thick
        and region.fill_ratio >= _BAR_FILL_RATIO
        and lightest - darkest >= _BAR_CONTRAST
    )


def _is_grey_card(region: Region, small: Image.Image) -> bool:
    left, top, right, bottom = region.box
    zone = _CARD_ZONE_RATIO * max(small.size)
    in_corner = min(left, small.width - right) <= zone and min(top, small.height - bottom) <= zone
    is_small = max(region.sides) <= _CARD_RATIO * max(small.size)
    return in_corner and is_small and region.fill_ratio >= _CARD_FILL_RATIO


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
        across, down = (aid.box[0] + aid.box[2]) / 2, (aid.box[1] + aid.box[3]) / 2
        if down > tight[3]:
            bottom = min(bottom, max(tight[3], aid.box[1]))
        elif down < tight[1]:
            top = max(top, min(tight[1], aid.box[3]))
        elif across > tight[2]:
            right = min(right, max(tight[2], aid.box[0]))
        elif across < tight[0]:
            left = max(left, min(tight[0], aid.box[2]))
    return (left, top, right, bottom)


def _scaled(box: Box | None, size: tuple[int, int], small: tuple[int, int]) -> Box | None:
    """Bring a box of the small copy to full size; None when too little of a side is left."""
    if box is None:
        return None
    across, down = size[0] / small[0], size[1] / small[1]
    left, top = math.floor(box[0] * across), math.floor(box[1] * down)
    right = min(size[0], math.ceil(box[2] * across))
    bottom = min(size[1], math.ceil(box[3] * down))
    wide, tall = (right - left) / size[0], (bottom - top) / size[1]
    return None if min(wide, tall) < LEAST_SIDE_RATIO else (left, top, right, bottom)
