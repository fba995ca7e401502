from __future__ import annotations

from dataclasses import replace

import pytest

from service.errors import DoesNotFitError
from service.geometry import Size
from service.legibility import LEAST_ANGLE_ARCMIN, cap_height_mm
from service.pages.asked.shoulder_tag import RAIL_DISTANCE_MM
from service.pages.page import ShapeBlock
from service.pages.setting.type import caps_mm
from service.records.codes import HAZARD_CODES
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from tests.contents.made import GARMENT_COVER, hazard, objects, packing
from tests.pages.checks import collisions, marks, numbers, said, strays, texts
from tests.pages.made import shoulder_pages

NARROW, WIDE = Size(30.0, 90.0), Size(45.0, 130.0)
REAL = PangoRuler(FONTS_CONF)
ONE = objects(1)[0]


@pytest.mark.parametrize("size", [NARROW, WIDE], ids=["narrow", "wide"])
@pytest.mark.parametrize("number", ["G-7", "GC-004", "PM.2026.0042", "BAY-2/4"])
def test_the_number_is_read_from_the_rail(number: str, size: Size) -> None:
    """16 arc minutes or more (NUREG-0700, item 1.3.1-4); it breaks only where numbers may."""
    made = packing([ONE], replace(GARMENT_COVER, container_number=number))
    pages = shoulder_pages(made, size, REAL)
    (block,) = texts(pages, "container-number")
    least_mm = cap_height_mm(RAIL_DISTANCE_MM, angle_arcmin=LEAST_ANGLE_ARCMIN)
    assert caps_mm(block.style.size_pt) >= least_mm - 1e-6
    assert "".join(block.lines) == number
    assert all(line[-1] in ".-/" for line in block.lines[:-1])


@pytest.mark.parametrize("count", [1, 5])
def test_nothing_is_left_out(count: int) -> None:
    """Twelve hazards and every object stand on the tags, which say which of how many they are."""
    records = [
        replace(one, hazards=tuple(map(hazard, HAZARD_CODES[:12]))) for one in objects(count)
    ]
    pages = shoulder_pages(packing(records, GARMENT_COVER), NARROW, REAL)
    assert numbers(pages) == [one.object_number for one in records]
    assert len(marks(pages)) == len(said(pages, "mark-words")) == 12
    assert [words.split(" · ")[0] for words in said(pages, "part")] == [
        f"tag {number} of {len(pages)}" for number in range(1, len(pages) + 1)
    ]
    for page in pages:
        assert collisions(page, REAL) == []
        assert strays(page, REAL, margin_mm=2.0) == []


def test_the_hole_is_at_the_top() -> None:
    """It hangs straight: the hole is in the middle of the width."""
    (page,) = shoulder_pages(packing([ONE], GARMENT_COVER), NARROW, REAL)
    (hole,) = (b for b in page.blocks if isinstance(b, ShapeBlock) and b.purpose == "hole")
    assert hole.rect.x_mm + hole.rect.width_mm / 2 == pytest.approx(15.0)
    assert hole.rect.bottom_mm < texts([page], "container-number")[0].rect.y_mm


def test_a_number_too_long_for_the_tag_is_refused() -> None:
    """A tag that cannot be read from the rail is not printed."""
    made = packing([ONE], replace(GARMENT_COVER, container_number="W" * 14))
    with pytest.raises(DoesNotFitError, match="The number needs"):
        shoulder_pages(made, NARROW, REAL)
