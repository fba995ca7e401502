from __future__ import annotations

from PIL import Image, ImageDraw

from service.render.pictures.regions import Region, find_regions


def test_regions_touch_by_corners_and_sides() -> None:
    """Two diagonal neighbours are one region, a pixel between parts them, dust is left out."""
    mask = Image.new("L", (20, 12))
    for box in ((1, 1, 4, 4), (4, 4, 8, 8), (9, 1, 12, 4), (15, 5, 16, 6)):
        mask.paste(255, box)
    found = {(region.box, region.pixels) for region in find_regions(mask)}
    assert found == {((1, 1, 8, 8), 25), ((9, 1, 12, 4), 9)}


def test_a_ring_is_one_region() -> None:
    """Runs that part and meet again belong together."""
    mask = Image.new("L", (20, 20))
    ImageDraw.Draw(mask).rectangle((2, 3, 15, 16), outline=255)
    assert [region.box for region in find_regions(mask)] == [(2, 3, 16, 17)]


def test_an_empty_picture_has_no_region() -> None:
    """Nothing white means nothing found."""
    assert find_regions(Image.new("L", (9, 9))) == ()


def test_a_region_knows_its_sides_and_how_full_it_is() -> None:
    """Half of a box of 4 x 6 is 12 pixels."""
    region = Region((1, 2, 5, 8), 12)
    assert (region.sides, region.fill_ratio) == ((4, 6), 0.5)
