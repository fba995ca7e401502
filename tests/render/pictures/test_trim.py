from __future__ import annotations

import pytest
from PIL import Image, ImageChops, ImageDraw, ImageFilter

from service.render.pictures.regions import Box
from service.render.pictures.trim import MARGIN_RATIO, WORKING_SIDE_PX, find_object_box

SIZE = (1200, 900)
WHOLE = (0, 0, *SIZE)
GREY, WHITE, BROWN = (128, 128, 128), (246, 246, 246), (110, 60, 30)
OBJECT = (400, 250, 800, 600)
BAR = (700, 800, 1100, 840)


def _lit(colour: tuple[int, int, int]) -> Image.Image:
    """Make a sheet with light that falls off to one side, and the noise of a camera."""
    sheet = Image.new("RGB", SIZE, colour)
    light = Image.linear_gradient("L").resize(SIZE).point(lambda level: level * 30 // 255)
    noise = Image.effect_noise(SIZE, 6).point(lambda level: max(0, level - 120))
    shade = ImageChops.add(light, noise)
    return ImageChops.subtract(sheet, Image.merge("RGB", (shade, shade, shade)))


def _with_object(sheet: Image.Image, box: Box = OBJECT) -> Image.Image:
    ImageDraw.Draw(sheet).ellipse((box[0], box[1], box[2] - 1, box[3] - 1), fill=BROWN)
    return sheet


def _draw_bar(sheet: Image.Image, box: Box = BAR) -> None:
    """Draw a scale bar of ten parts, black and white along one half of it."""
    bar = Image.new("RGB", (200, 20), "white")
    for left in range(0, 200, 40):
        bar.paste((0, 0, 0), (left, 0, left + 20, 10))
    size = (box[2] - box[0], box[3] - box[1])
    turned = bar if size[0] > size[1] else bar.transpose(Image.Transpose.ROTATE_90)
    sheet.paste(turned.resize(size, Image.Resampling.NEAREST), box)


def _holds(box: Box, inner: Box) -> bool:
    return all(a <= b for a, b in zip(box[:2], inner[:2], strict=True)) and all(
        a >= b for a, b in zip(box[2:], inner[2:], strict=True)
    )


def _assert_trimmed(sheet: Image.Image, inner: Box) -> None:
    """Hold the box to the whole object, the margin and three pixels of the small copy round it."""
    box = find_object_box(sheet)
    long_side = max(inner[2] - inner[0], inner[3] - inner[1])
    slack = round(MARGIN_RATIO * long_side + 3 * SIZE[0] / WORKING_SIDE_PX)
    wide = (inner[0] - slack, inner[1] - slack, inner[2] + slack, inner[3] + slack)
    assert _holds(box, inner)
    assert _holds(wide, box)


@pytest.mark.parametrize("colour", [GREY, WHITE, (60, 62, 66), (205, 190, 170)])
def test_an_object_on_a_plain_sheet_is_found(colour: tuple[int, int, int]) -> None:
    """The box holds the object with a margin of about 4 % on grey, white, dark and buff sheets."""
    _assert_trimmed(_with_object(_lit(colour)), OBJECT)


def test_a_soft_shadow_is_left_out() -> None:
    """A soft shadow beside the object does not count as object."""
    shadow = Image.new("L", SIZE)
    ImageDraw.Draw(shadow).ellipse((250, 350, 700, 680), fill=26)
    shadow = shadow.filter(ImageFilter.GaussianBlur(45))
    shade = Image.merge("RGB", (shadow, shadow, shadow))
    _assert_trimmed(_with_object(ImageChops.subtract(_lit(GREY), shade)), OBJECT)


def test_a_scale_bar_beside_the_object_is_left_out() -> None:
    """A black and white bar that stands apart is cut off."""
    sheet = _with_object(_lit(GREY))
    _draw_bar(sheet)
    _assert_trimmed(sheet, OBJECT)


@pytest.mark.parametrize(
    ("bar", "side", "limit_px"),
    [
        ((300, 795, 700, 835), 3, 795),
        ((300, 60, 700, 100), 1, 100),
        ((1030, 300, 1070, 700), 2, 1030),
        ((120, 300, 160, 700), 0, 160),
    ],
    ids=["below", "above", "right", "left"],
)
def test_the_margin_stops_short_of_the_bar(bar: Box, side: int, limit_px: int) -> None:
    """A bar close to the object is not half seen at the edge of the picture."""
    lying = (200, 130, 1000, 770)
    sheet = _with_object(_lit(GREY), lying)
    _draw_bar(sheet, bar)
    box = find_object_box(sheet)
    assert _holds(box, lying)
    assert box[side] >= limit_px - 8 if side < 2 else box[side] <= limit_px


def test_crumbs_of_the_bar_go_with_it() -> None:
    """A scratch of shadow at the foot of the bar does not keep the bar in the picture."""
    sheet = _with_object(_lit(GREY))
    _draw_bar(sheet)
    ImageDraw.Draw(sheet).rectangle((1040, 848, 1090, 853), fill=(60, 60, 60))
    _assert_trimmed(sheet, OBJECT)


def test_a_grey_card_in_a_corner_is_left_out() -> None:
    """A small grey rectangle in a corner is cut off."""
    sheet = _with_object(_lit(WHITE))
    ImageDraw.Draw(sheet).rectangle((40, 760, 200, 860), fill=(118, 118, 118))
    _assert_trimmed(sheet, OBJECT)


def test_a_bar_that_lies_alone_is_the_object() -> None:
    """Where nothing else is found, what looks like a scale bar stays."""
    sheet = _lit(GREY)
    bar = (300, 400, 900, 500)
    _draw_bar(sheet, bar)
    _assert_trimmed(sheet, bar)


@pytest.mark.parametrize(
    "second",
    [(100, 700, 180, 780), (1000, 60, 1080, 140), (850, 500, 900, 550)],
    ids=["corner", "other corner", "near"],
)
def test_every_piece_of_an_object_is_kept(second: Box) -> None:
    """A button beside its glove stays in the picture wherever it lies."""
    sheet = _with_object(_with_object(_lit(GREY)), second)
    box = find_object_box(sheet)
    assert _holds(box, OBJECT)
    assert _holds(box, second)


def test_a_thin_pin_is_kept_to_its_point() -> None:
    """Two pixels in a thousand are enough to be seen."""
    sheet = _lit(GREY)
    ImageDraw.Draw(sheet).line((120, 200, 1080, 700), fill=(225, 225, 225), width=4)
    box = find_object_box(sheet)
    assert _holds(box, (120, 200, 1080, 700))


def test_white_on_white_is_kept() -> None:
    """A white plate on a white sheet is found by its faint rim and not cut to its pattern."""
    sheet = _lit(WHITE)
    draw = ImageDraw.Draw(sheet)
    draw.ellipse((300, 150, 900, 750), fill=(232, 232, 228), outline=(205, 205, 200), width=6)
    draw.ellipse((560, 410, 640, 490), fill=(40, 60, 140))
    assert _holds(find_object_box(sheet), (300, 150, 900, 750))


def test_an_object_that_leaves_the_picture_keeps_that_edge() -> None:
    """Where the object goes over the edge, the box goes to the edge."""
    box = find_object_box(_with_object(_lit(GREY), (-200, 250, 500, 650)))
    assert box[0] == 0
    assert _holds(box, (0, 250, 500, 650))


def test_a_patterned_ground_is_left_as_it_is() -> None:
    """A photo on cloth, wood or in a room is not trimmed."""
    sheet = Image.effect_noise((30, 22), 200).resize(SIZE, Image.Resampling.NEAREST)
    assert find_object_box(_with_object(sheet.convert("RGB"))) == WHOLE


def test_an_empty_sheet_is_left_as_it_is() -> None:
    """Nothing found means nothing cut."""
    assert find_object_box(_lit(GREY)) == WHOLE


def test_less_than_a_tenth_of_a_side_is_not_a_picture() -> None:
    """A speck in the middle does not become the picture."""
    assert find_object_box(_with_object(_lit(GREY), (600, 450, 650, 490))) == WHOLE


@pytest.mark.parametrize("size", [(1, 1), (3, 2), (1, 400), (400, 1), (50, 40)])
def test_small_and_narrow_pictures_are_no_trouble(size: tuple[int, int]) -> None:
    """Any size gives a box inside the picture."""
    box = find_object_box(Image.new("RGB", size, GREY))
    assert box == (0, 0, *size)
