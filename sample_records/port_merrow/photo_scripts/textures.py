"""Pictures that dress the meshes: wood, cloth, stoneware, paper, wear and lettering.

Every function returns colours or greys between 0 and 1 as they look on a screen (sRGB).
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
from PIL import Image, ImageDraw, ImageFont
from scipy import ndimage

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Array = NDArray[np.float64]
Colour = tuple[float, float, float]

FONTS = Path("/usr/share/fonts/truetype/dejavu")


def font(size_px: int, name: str = "DejaVuSerif") -> ImageFont.FreeTypeFont:
    """Return a font of the machine's DejaVu family."""
    return ImageFont.truetype(FONTS / f"{name}.ttf", size_px)


def noise(shape: tuple[int, int], sizes: tuple[float, float], seed: int) -> Array:
    """Return smooth noise between 0 and 1 with blobs of about the given rows and columns."""
    white = np.random.default_rng(seed).random(shape)
    soft = ndimage.gaussian_filter(white, sizes, mode="wrap")
    low, high = np.percentile(soft, [1, 99])
    return np.clip((soft - low) / (high - low), 0, 1)


def clouds(shape: tuple[int, int], size: float, seed: int) -> Array:
    """Return noise of several sizes added up, for stains and tarnish."""
    layers = [noise(shape, (size / 2**i, size / 2**i), seed + i) / 2**i for i in range(4)]
    total: Array = np.sum(layers, axis=0)
    low, high = np.percentile(total, [1, 99])
    return np.clip((total - low) / (high - low), 0, 1)


def mix(first: Colour | Array, second: Colour | Array, share: Array) -> Array:
    """Return the first colour where share is 0 and the second where it is 1."""
    a, b = np.asarray(first, dtype=float), np.asarray(second, dtype=float)
    return a + (b - a) * share[..., None]


def plain(
    colour: Colour, *, spread: float = 0.12, seed: int = 0, size: int = 512, blob: float = 60.0
) -> Array:
    """Return a colour with gentle uneven tone."""
    tone = 1 + spread * (clouds((size, size), blob, seed) - 0.5) * 2
    return np.clip(np.asarray(colour) * tone[..., None], 0, 1)


def wood(
    light: Colour, dark: Colour, *, seed: int = 0, rings: float = 9.0, size: int = 1024
) -> Array:
    """Return wood with the grain running along u (columns)."""
    rows = np.linspace(0, 1, size)[:, None]
    wave = noise((size, size), (90, 260), seed) * 0.5
    figure = 0.5 + 0.5 * np.sin(2 * np.pi * (rows * rings + wave * rings * 0.45))
    fibre = noise((size, size), (0.8, 42), seed + 1)
    pores = noise((size, size), (0.7, 14), seed + 2) > 0.93
    share = np.clip(0.5 * figure**2 + 0.45 * fibre, 0, 1)
    colours = mix(light, dark, share)
    return np.clip(colours * (1 - 0.3 * pores[..., None]), 0, 1)


def speckled(base: Colour, spots: Colour, *, seed: int = 0, amount: float = 0.12) -> Array:
    """Return salt glaze: mottled ground with small dark iron spots."""
    size = 1024
    ground = plain(base, spread=0.14, seed=seed, size=size, blob=40)
    fine = noise((size, size), (2.0, 2.0), seed + 7)
    spot = np.clip((fine - (1 - amount * 2)) * 6, 0, 1)
    return mix(ground, spots, spot)


def weave(size: int = 1024, threads: int = 128) -> Array:
    """Return the height of a plain weave between 0 and 1."""
    t = np.arange(size) / size * threads * np.pi
    warp, weft = np.abs(np.sin(t))[None, :], np.abs(np.sin(t))[:, None]
    over = (np.floor(t / np.pi)[None, :] + np.floor(t / np.pi)[:, None]) % 2
    return np.where(over > 0, warp * 0.6 + 0.4 * weft, weft * 0.6 + 0.4 * warp)


def aged_paper(shape: tuple[int, int], colour: Colour = (0.87, 0.80, 0.66), seed: int = 0) -> Array:
    """Return old paper, browner toward the edges, with a few foxing spots."""
    rows, columns = shape
    y, x = np.mgrid[0:rows, 0:columns]
    edge = np.minimum.reduce([x, y, columns - 1 - x, rows - 1 - y]) / (0.12 * min(shape))
    toned = mix(tuple(0.80 * c for c in colour), colour, np.clip(edge, 0, 1) ** 0.6)
    stain = clouds(shape, min(shape) / 6, seed)
    toned = toned * (0.93 + 0.07 * stain[..., None])
    foxing = np.clip((noise(shape, (3, 3), seed + 11) - 0.985) * 40, 0, 0.6)
    foxing = ndimage.gaussian_filter(foxing, 2)
    return np.clip(mix(toned, (0.62, 0.42, 0.22), foxing), 0, 1)


def canvas(array: Array) -> Image.Image:
    """Return the array as a picture to draw on."""
    return Image.fromarray((np.clip(array, 0, 1) * 255 + 0.5).astype(np.uint8))


def array_of(picture: Image.Image) -> Array:
    """Return the picture as an array again."""
    return np.asarray(picture, dtype=float) / 255


def inked(
    paper: Array, ink: Image.Image, colour: Colour, *, seed: int = 0, worn: float = 0.25
) -> Array:
    """Return paper printed where the grey picture `ink` is dark, unevenly as old print is."""
    cover = 1 - np.asarray(ink.convert("L"), dtype=float) / 255
    patchy = 1 - worn * clouds((cover.shape[0], cover.shape[1]), 18, seed)
    return mix(paper, colour, np.clip(cover * patchy, 0, 1))


def centred(
    draw: ImageDraw.ImageDraw,
    where: tuple[float, float],
    text: str,
    size_px: int,
    *,
    fill: object = 0,
    name: str = "DejaVuSerif",
) -> None:
    """Draw text centred on a point."""
    draw.text(where, text, fill=fill, font=font(size_px, name), anchor="mm")


def blurred(array: Array, sigma: float) -> Array:
    """Return the array softened, colours kept apart."""
    sigmas = (sigma, sigma) + (0,) * (array.ndim - 2)
    return np.asarray(ndimage.gaussian_filter(array, sigmas), dtype=float)
