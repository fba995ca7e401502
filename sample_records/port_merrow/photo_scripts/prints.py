"""Printed, painted and engraved faces: compass rose, seal, chart, portraits, labels."""

from __future__ import annotations

import numpy as np
from PIL import Image, ImageDraw
from scipy import ndimage
from textures import aged_paper, array_of, blurred, canvas, centred, clouds, inked, mix, noise

Array = np.ndarray


def compass_rose(size: int = 1600) -> Array:
    """Return a 32-point rose with luminous cardinal marks, on black paper."""
    ground = np.full((size, size, 3), (0.055, 0.06, 0.065)) * (
        0.8 + 0.4 * clouds((size, size), 80, 3)[..., None]
    )
    sheet = canvas(ground)
    draw = ImageDraw.Draw(sheet)
    middle, radius = size / 2, size / 2
    white, glow = (232, 226, 205), (206, 196, 122)

    def at(turn_deg: float, share: float) -> tuple[float, float]:
        angle = np.radians(turn_deg - 90)
        return middle + np.cos(angle) * radius * share, middle + np.sin(angle) * radius * share

    for degree in range(0, 360, 2):
        inner = 0.88 if degree % 10 == 0 else 0.915
        draw.line(
            (*at(degree, inner), *at(degree, 0.95)), fill=white, width=5 if degree % 10 == 0 else 3
        )
    for share in (0.955, 0.87, 0.66):
        draw.ellipse(
            (middle - radius * share,) * 2 + (middle + radius * share,) * 2, outline=white, width=5
        )
    for step, reach, half in (
        (11.25, 0.60, 3.0),
        (22.5, 0.62, 5.0),
        (45, 0.66, 9.0),
        (90, 0.69, 11.0),
    ):
        for k in range(int(360 / step)):
            turn = k * step
            tip, base = at(turn, reach), (middle, middle)
            left, right = at(turn - half, reach * 0.36), at(turn + half, reach * 0.36)
            draw.polygon([tip, base, left], fill=white)
            draw.polygon([tip, base, right], fill=(40, 42, 46), outline=white)
    for turn, text in zip(
        range(0, 360, 45), ("", "NE", "E", "SE", "S", "SW", "W", "NW"), strict=True
    ):
        _turned_text(sheet, at(turn, 0.78), text, turn, 92 if len(text) == 1 else 62, glow)
    fleur = [
        at(0, 0.86),
        at(-5, 0.76),
        at(-7.5, 0.73),
        at(-3.5, 0.70),
        at(0, 0.67),
        at(3.5, 0.70),
        at(7.5, 0.73),
        at(5, 0.76),
    ]
    draw.polygon(fleur, fill=glow)
    worn = array_of(sheet)
    loss = np.clip((noise((size, size), (3, 3), 6) - 0.97) * 12, 0, 0.7)
    return mix(worn, (0.30, 0.27, 0.2), loss)


def _turned_text(
    sheet: Image.Image,
    where: tuple[float, float],
    text: str,
    turn_deg: float,
    size_px: int,
    fill: object,
) -> None:
    stamp = Image.new("L", (size_px * 3, size_px * 2), 0)
    centred(
        ImageDraw.Draw(stamp),
        (size_px * 1.5, size_px),
        text,
        size_px,
        fill=255,
        name="DejaVuSerif-Bold",
    )
    stamp = stamp.rotate(-turn_deg, expand=True, resample=Image.Resampling.BICUBIC)
    corner = (int(where[0] - stamp.width / 2), int(where[1] - stamp.height / 2))
    sheet.paste(fill, corner, stamp)


def seal_face(size: int = 700) -> tuple[Array, Array]:
    """Return heights and outline of a wax impression: an anchor inside a ring of letters."""
    stamp = Image.new("L", (size, size), 0)
    draw = ImageDraw.Draw(stamp)
    m, r = size / 2, size * 0.36
    for share, width in ((1.0, 10), (0.66, 7)):
        draw.ellipse(
            (m - r * share, m - r * share, m + r * share, m + r * share), outline=255, width=width
        )
    draw.line((m, m - r * 0.42, m, m + r * 0.42), fill=255, width=22)
    draw.line((m - r * 0.2, m - r * 0.24, m + r * 0.2, m - r * 0.24), fill=255, width=18)
    draw.ellipse((m - 22, m - r * 0.60, m + 22, m - r * 0.60 + 44), outline=255, width=12)
    draw.arc((m - r * 0.38, m - r * 0.34, m + r * 0.38, m + r * 0.44), 20, 160, fill=255, width=22)
    text = "ΛΙΜΕΝΑΡΧΕΙΟΝ · ΜΕΡΡΩ · "
    for k, letter in enumerate(text):
        turn = k * 360 / len(text) - 150
        angle = np.radians(turn - 90)
        _turned_text(
            stamp,
            (m + np.cos(angle) * r * 0.83, m + np.sin(angle) * r * 0.83),
            letter,
            turn,
            66,
            255,
        )
    raised = blurred(np.asarray(stamp, dtype=float) / 255, 1.5)
    y, x = np.mgrid[0:size, 0:size] - m
    away, angle = np.hypot(x, y), np.arctan2(y, x)
    edge = size * (0.435 + 0.022 * np.sin(3 * angle + 1) + 0.012 * np.sin(7 * angle))
    opacity = (away < edge).astype(float)
    rim = np.exp(-(((away - size * 0.405) / (size * 0.022)) ** 2)) * 1.6 + np.where(
        away > size * 0.42, -1.2, 0
    )
    return blurred(raised + rim, 2.0), opacity


def sepia(grey: Array) -> Array:
    """Return greys in the browns of an albumen print."""
    return mix((0.17, 0.10, 0.065), (0.92, 0.84, 0.68), np.clip(grey, 0, 1) ** 0.9)


def label(
    size: tuple[int, int],
    lines: list[tuple[str, int]],
    *,
    seed: int = 0,
    colour: tuple[float, float, float] = (0.90, 0.84, 0.70),
    ink: tuple[float, float, float] = (0.1, 0.09, 0.08),
) -> Array:
    """Return a printed paper label with a double border and the centred lines (text, pixels)."""
    columns, rows = size
    sheet = Image.new("L", size, 255)
    draw = ImageDraw.Draw(sheet)
    for inset, width in ((10, 5), (22, 2)):
        draw.rectangle((inset, inset, columns - inset, rows - inset), outline=0, width=width)
    total = sum(px * 1.35 for _, px in lines)
    y = (rows - total) / 2
    for text, px in lines:
        y += px * 0.675
        centred(draw, (columns / 2, y), text, px, name="DejaVuSerif-Bold")
        y += px * 0.675
    return inked(aged_paper((rows, columns), colour, seed), sheet, ink, seed=seed)


def degree_scale(size: int, *, metal_tone: Array) -> Array:
    """Return a round scale cut into metal and blackened, half degrees and figures."""
    sheet = Image.new("L", (size, size), 255)
    draw = ImageDraw.Draw(sheet)
    m = size / 2
    for half in range(720):
        angle = half * np.pi / 360
        inner = 0.90 if half % 20 == 0 else (0.92 if half % 10 == 0 else 0.945)
        a = (m + np.cos(angle) * m * inner, m + np.sin(angle) * m * inner)
        b = (m + np.cos(angle) * m * 0.975, m + np.sin(angle) * m * 0.975)
        draw.line((*a, *b), fill=0, width=2)
    for degree in range(0, 360, 10):
        angle = np.radians(degree - 90)
        _turned_text(
            sheet,
            (m + np.cos(angle) * m * 0.85, m + np.sin(angle) * m * 0.85),
            str(degree),
            degree,
            size // 34,
            0,
        )
    return mix(metal_tone, (0.10, 0.08, 0.05), 1 - np.asarray(sheet, dtype=float) / 255)


def distance_from_edge(mask: Array) -> Array:
    """Return for each pixel inside the mask how far the nearest edge is, in pixels."""
    return np.asarray(ndimage.distance_transform_edt(mask > 0), dtype=float)
