from __future__ import annotations

import contextlib
import io
import math
import struct
import zlib
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image, ImageCms, ImageFile, ImageStat

from service.errors import PictureError
from service.render.pictures.photos import decode_photo, open_photo

HEIC = Path(__file__).parents[1] / "data" / "turned.heic"
RED, WHITE = (220, 30, 30), (255, 255, 255)


def _file(picture: Image.Image, kind: str, **options: object) -> bytes:
    target = io.BytesIO()
    picture.save(target, kind, **options)
    return target.getvalue()


def _opened(picture: Image.Image, kind: str, **options: object) -> Image.Image:
    return open_photo(_file(picture, kind, **options), name="photo")


def _reason(data: bytes) -> str:
    with pytest.raises(PictureError) as caught:
        open_photo(data, name="photo.jpg")
    assert caught.value.name == "photo.jpg"
    return caught.value.reason


def _photo(size: tuple[int, int] = (240, 160)) -> Image.Image:
    across = Image.linear_gradient("L").rotate(90).resize(size)
    down = Image.linear_gradient("L").resize(size)
    return Image.merge("RGB", (across, down, Image.radial_gradient("L").resize(size)))


def _wide_ramp(mode: str, low: float, high: float) -> Image.Image:
    """Make 256 x 16 pixels whose values rise evenly from `low` to `high`."""
    letter = {"I;16": "<H", "I": "<i", "F": "<f"}[mode]
    steps = [low + (high - low) * x / 255 for x in range(256)]
    values = steps if mode == "F" else [round(step) for step in steps]
    row = b"".join(struct.pack(letter, value) for value in values)
    return Image.frombytes(mode, (256, 16), row * 16)


def _png_head(width: int, height: int) -> bytes:
    """Make a PNG (ISO/IEC 15948) that claims a size and holds hardly a pixel."""
    head = b"IHDR" + struct.pack(">IIBBBBB", width, height, 1, 0, 0, 0, 0)
    data = b"IDAT" + zlib.compress(b"\0" * 64)
    chunks = (
        struct.pack(">I", len(chunk) - 4) + chunk + struct.pack(">I", zlib.crc32(chunk))
        for chunk in (head, data, b"IEND")
    )
    return b"\x89PNG\r\n\x1a\n" + b"".join(chunks)


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "TIFF", "WEBP", "GIF", "BMP", "AVIF"])
def test_every_listed_format_opens(kind: str) -> None:
    """A red square comes back red and as large as it was, in RGB without anything beside."""
    opened = _opened(Image.new("RGB", (64, 48), RED), kind)
    assert (opened.mode, opened.size, opened.info) == ("RGB", (64, 48), {})
    assert type(opened) is Image.Image
    assert ImageStat.Stat(opened).mean == pytest.approx(RED, abs=4)


def test_a_telephone_photo_opens_upright() -> None:
    """A HEIC turned by a quarter to the right shows its four corners where they belong."""
    opened = open_photo(HEIC.read_bytes(), name="turned.heic")
    assert (opened.size, opened.info) == ((96, 128), {})
    corners = [opened.getpixel((x, y)) for y in (10, 118) for x in (10, 86)]
    blue, red, yellow, green = (30, 30, 220), (220, 30, 30), (230, 220, 40), (30, 180, 30)
    for corner, expected in zip(corners, (blue, red, yellow, green), strict=True):
        assert corner == pytest.approx(expected, abs=4)


def test_a_file_of_several_photos_gives_the_first() -> None:
    """Animated GIF and MPO files open at their first picture."""
    rest = [Image.new("RGB", (64, 48), "blue")]
    for kind in ("GIF", "MPO"):
        opened = _opened(Image.new("RGB", (64, 48), RED), kind, save_all=True, append_images=rest)
        assert ImageStat.Stat(opened).mean == pytest.approx(RED, abs=4)


@pytest.mark.parametrize(
    ("mode", "kind", "low", "high"),
    [
        ("I;16", "PNG", 0, 65535),
        ("I;16", "TIFF", 1000, 60000),
        ("I;16", "TIFF", 30000, 30510),
        ("I", "TIFF", -5000, 400000),
        ("F", "TIFF", 0.0, 1.0),
        ("F", "TIFF", -3.5, 1200.25),
    ],
)
def test_wide_grey_keeps_mean_and_spread(mode: str, kind: str, low: float, high: float) -> None:
    """An even ramp of any range has the mean and spread of an even ramp of 0 to 255."""
    opened = _opened(_wide_ramp(mode, low, high), kind)
    statistics = ImageStat.Stat(opened.convert("L"))
    assert statistics.mean[0] == pytest.approx(127.5, abs=1)
    assert statistics.stddev[0] == pytest.approx(math.sqrt((256**2 - 1) / 12), abs=1)
    assert statistics.extrema[0] == (0, 255)


def test_wide_grey_of_one_value_is_grey() -> None:
    """A flat picture of 16 bits has no range and is neither black nor white."""
    assert _opened(_wide_ramp("I;16", 700, 700), "TIFF").getpixel((0, 0)) == (128, 128, 128)


def test_wide_grey_without_numbers_is_refused() -> None:
    """Values that are not numbers are damage."""
    assert _reason(_file(_wide_ramp("F", math.nan, math.nan), "TIFF")) == "the file is damaged"


@pytest.mark.parametrize(
    ("mode", "colour", "kind", "options", "expected"),
    [
        ("RGBA", (*RED, 0), "PNG", {}, WHITE),
        ("RGBA", (*RED, 255), "PNG", {}, RED),
        ("RGBA", (0, 0, 0, 128), "PNG", {}, (127, 127, 127)),
        ("RGBA", (*RED, 0), "WEBP", {"lossless": True}, WHITE),
        ("LA", (0, 128), "PNG", {}, (127, 127, 127)),
        ("P", 0, "GIF", {"transparency": 0}, WHITE),
        ("P", 0, "PNG", {"transparency": b"\0"}, WHITE),
        ("RGB", RED, "PNG", {"transparency": RED}, WHITE),
        ("L", 7, "PNG", {"transparency": 7}, WHITE),
        ("L", 7, "PNG", {}, (7, 7, 7)),
        ("1", 1, "TIFF", {}, WHITE),
        ("CMYK", (0, 255, 255, 0), "JPEG", {"quality": 100}, (255, 0, 0)),
        ("CMYK", (0, 0, 0, 0), "TIFF", {}, WHITE),
        ("LAB", (255, 128, 128), "TIFF", {}, WHITE),
        ("LAB", (0, 128, 128), "TIFF", {}, (0, 0, 0)),
        ("YCbCr", (130, 128, 128), "JPEG", {}, (130, 130, 130)),
    ],
)
def test_every_kind_of_pixel_becomes_what_paper_shows(
    mode: str,
    colour: int | tuple[int, ...],
    kind: str,
    options: dict[str, object],
    expected: tuple[int, int, int],
) -> None:
    """Transparency shows white paper; grey, palette, CMYK and LAB come out in their colour."""
    opened = _opened(Image.new(mode, (16, 16), colour), kind, **options)
    assert opened.mode == "RGB"
    assert opened.getpixel((8, 8)) == pytest.approx(expected, abs=2)


def _swapped_profile() -> bytes:
    """Give a profile whose red and blue primaries are those of sRGB exchanged (ICC.1:2022, 9.2)."""
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    for old, new in ((b"sRGB", b"swap"), ("sRGB".encode("utf-16-be"), "swap".encode("utf-16-be"))):
        profile = profile.replace(old, new)
    return profile.replace(b"rXYZ", b"qXYZ").replace(b"bXYZ", b"rXYZ").replace(b"qXYZ", b"bXYZ")


def test_the_profile_of_a_photo_is_obeyed() -> None:
    """Full red of a profile with red and blue exchanged is blue, transparent or not."""
    for mode, colour in (("RGB", (255, 0, 0)), ("RGBA", (255, 0, 0, 255))):
        picture = Image.new(mode, (16, 16), colour)
        opened = _opened(picture, "PNG", icc_profile=_swapped_profile())
        assert opened.getpixel((8, 8)) == pytest.approx((0, 0, 255), abs=3)


@pytest.mark.parametrize("mode", ["L", "RGB", "CMYK"])
def test_a_damaged_or_foreign_profile_is_ignored(mode: str) -> None:
    """A profile that cannot be used costs no photo."""
    picture = Image.new(mode, (16, 16))
    plain = _opened(picture, "TIFF").getpixel((8, 8))
    for profile in (b"nonsense", _swapped_profile()[:200], _swapped_profile()):
        assert _opened(picture, "TIFF", icc_profile=profile).getpixel((8, 8)) == plain


def test_nothing_told_beside_the_pixels_stays() -> None:
    """Place, device, comment and profile of a photo are gone from the picture in hand."""
    exif = Image.Exif()
    exif[0x010F] = "camera"
    exif.get_ifd(0x8825)[1] = "N"
    data = _file(_photo(), "JPEG", exif=exif, comment=b"home", xmp=b"<x/>", dpi=(72, 72))
    opened = open_photo(data, name="photo.jpg")
    assert (opened.info, dict(opened.getexif())) == ({}, {})


def test_a_smaller_copy_is_never_below_what_was_asked() -> None:
    """A JPEG decoded for a size comes at least that large and tells its stored size."""
    data = _file(_photo((1600, 1200)), "JPEG", quality=95)
    for wanted_px, given_px in ((1600, 1600), (801, 1600), (800, 800), (201, 400), (10, 10)):
        photo = decode_photo(data, name="photo", long_side_px=wanted_px)
        assert (max(photo.image.size), photo.source_long_side_px) == (given_px, 1600)


@pytest.mark.parametrize("mode", ["1", "L", "P", "LA", "RGB", "RGBA", "CMYK", "I;16", "I", "F"])
def test_a_smaller_copy_shows_the_same(mode: str) -> None:
    """Pictures of every kind that are averaged down keep half black and half white."""
    halves = Image.new("L", (900, 300))
    halves.paste(255, (450, 0, 900, 300))
    wide = b"".join(bytes((level, level)) for level in halves.tobytes())
    wide_picture = Image.frombytes("I;16", halves.size, wide)
    data = _file(wide_picture if mode == "I;16" else halves.convert(mode), "TIFF")
    opened = open_photo(data, name="photo", long_side_px=400)
    assert opened.size == (450, 150)
    assert opened.getpixel((50, 70)) == pytest.approx((0, 0, 0), abs=2)
    assert opened.getpixel((400, 70)) == pytest.approx(WHITE, abs=2)


def test_a_photo_with_one_bit_per_pixel_can_be_too_large() -> None:
    """A file of a few kB that unfolds to 169 million pixels is refused before it does."""
    data = _file(Image.new("1", (13000, 13000)), "PNG")
    assert len(data) < 100_000
    assert _reason(data) == "too many pixels (169 MP, limit 100 MP)"


@pytest.mark.parametrize(
    ("size", "reason"),
    [
        ((20000, 20000), "too many pixels (limit 100 MP)"),
        ((60001, 1), "one side is too long (60001 px, limit 60000 px)"),
        ((1, 60001), "one side is too long (60001 px, limit 60000 px)"),
    ],
)
def test_sizes_are_refused_from_the_head(size: tuple[int, int], reason: str) -> None:
    """A claimed size over a limit is refused though the pixels are not there."""
    assert _reason(_png_head(*size)) == reason


def test_files_over_the_limit_are_not_looked_at() -> None:
    """More than 25 MB is refused whatever it is."""
    assert _reason(bytes(25_000_001)) == "the file is larger than 25 MB"


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"hello",
        b"%PDF-1.7\n",
        b"%!PS-Adobe-3.0 EPSF-3.0\n%%BoundingBox: 0 0 9 9\n",
        b'<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>',
        b"\xff\xd8\xff",
    ],
    ids=["nothing", "text", "pdf", "eps", "svg", "stub"],
)
def test_what_is_no_photo_is_named_so(data: bytes) -> None:
    """Documents, drawings and stubs are not photos."""
    assert _reason(data) == "the file is not a photo we can read"


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "TIFF", "WEBP", "GIF", "BMP", "AVIF"])
def test_a_cut_file_is_refused(kind: str) -> None:
    """Half a file is never printed as half a picture."""
    data = _file(_photo(), kind)
    assert _reason(data[: len(data) // 2])


def test_a_cut_file_is_refused_whatever_another_library_has_set() -> None:
    """The switch of Pillow that lets cut files through is not obeyed, and left as it was."""
    before = ImageFile.LOAD_TRUNCATED_IMAGES
    ImageFile.LOAD_TRUNCATED_IMAGES = True
    try:
        assert _reason(_file(_photo(), "JPEG")[:-200]) == "the file is cut short"
        assert ImageFile.LOAD_TRUNCATED_IMAGES
    finally:
        ImageFile.LOAD_TRUNCATED_IMAGES = before


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "BMP"])
def test_a_cut_file_is_called_cut(kind: str) -> None:
    """Where the decoder tells a cut from other damage, the reader hears it."""
    data = _file(_photo(), kind)
    assert _reason(data[: len(data) * 3 // 4]) == "the file is cut short"


@given(
    kind=st.sampled_from(["JPEG", "PNG", "TIFF", "WEBP", "GIF", "BMP"]),
    places=st.lists(st.tuples(st.floats(0, 0.999), st.integers(0, 255)), min_size=1, max_size=8),
)
def test_damage_gives_a_picture_or_a_picture_error(
    kind: str, places: list[tuple[float, int]]
) -> None:
    """Whatever bytes are changed, nothing else comes out."""
    data = bytearray(_file(_photo((48, 32)), kind))
    for place_ratio, value in places:
        data[int(place_ratio * len(data))] = value
    with contextlib.suppress(PictureError):
        assert open_photo(bytes(data), name="photo").mode == "RGB"
