from __future__ import annotations

import pytest
from fontTools.ttLib import TTFont

from service.pages.setting import type as sizes
from service.render.task import FONTS_CONF
from service.units import mm_from_points


@pytest.mark.parametrize(
    ("size_pt", "height_mm"),
    [
        (sizes.OBJECT_NUMBER_PT, 2.91),
        (sizes.LEAST_OBJECT_NUMBER_PT, 2.33),
        (sizes.size_for_distance_pt(1500), 8.73),
        (sizes.size_for_distance_pt(1500, angle_arcmin=16), 6.98),
    ],
)
def test_sizes_stand_for_heights(size_pt: float, height_mm: float) -> None:
    """Capitals are as high as NUREG-0700, item 1.3.1-4, asks at their distance."""
    assert sizes.caps_mm(size_pt) == pytest.approx(height_mm, abs=0.005)
    assert sizes.size_for_caps_pt(sizes.caps_mm(size_pt)) == pytest.approx(size_pt)


@pytest.mark.parametrize("weight", ["Regular", "SemiBold", "Bold", "ExtraBold"])
def test_the_face_is_as_high_as_we_say(weight: str) -> None:
    """Cap height, ascent and descent are those of the tables of the shipped fonts."""
    with TTFont(FONTS_CONF.parent / f"AtkinsonHyperlegibleNext-{weight}.ttf") as font:
        em = font["head"].unitsPerEm
        assert font["OS/2"].sCapHeight / em == pytest.approx(sizes.CAP_HEIGHT_RATIO, abs=0.001)
        content = (font["hhea"].ascent - font["hhea"].descent) / em
        assert content == pytest.approx(sizes.CONTENT_RATIO, abs=0.001)


def test_captions_are_never_below_six_points() -> None:
    """The least type is still larger than what is commonly called fine print (from memory)."""
    assert sizes.LEAST_CAPTION_PT > 6.0
    assert mm_from_points(sizes.LEAST_CAPTION_PT) > 2.0
