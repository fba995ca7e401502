"""Engraved harbour charts."""

from __future__ import annotations

import numpy as np
from PIL import Image, ImageDraw
from textures import aged_paper, centred, inked, noise

Array = np.ndarray


def chart(
    shape: tuple[int, int] = (900, 1300),
    *,
    title: str = "MERROW HAVEN",
    ink: tuple[float, float, float] = (0.12, 0.11, 0.10),
    seed: int = 3,
) -> Array:
    """Return an engraved harbour chart on old paper."""
    return inked(
        aged_paper(shape, seed=seed), chart_lines(shape, title=title, seed=seed), ink, seed=seed
    )


def chart_lines(shape: tuple[int, int], *, title: str, seed: int = 3) -> Image.Image:
    """Return the lines of a harbour chart, black on white: coast, soundings, rose, title."""
    rows, columns = shape
    sheet = Image.new("L", (columns, rows), 255)
    draw = ImageDraw.Draw(sheet)
    y, x = np.mgrid[0:rows, 0:columns]
    land = (
        noise((rows, columns), (rows / 9, rows / 9), seed)
        + 0.9 * (y / rows - 0.45)
        - 0.35 * (x / columns - 0.4)
    )
    level = land - 0.52
    for offset, width in ((0.0, 0.012), (-0.035, 0.004), (-0.07, 0.003), (-0.105, 0.002)):
        line = np.abs(level - offset) < width
        sheet.paste(
            20 if offset == 0 else 90, (0, 0), Image.fromarray((line * 255).astype(np.uint8))
        )
    hatch = (
        (level > 0.012)
        & (level < 0.09)
        & ((x * 2 + y * 3 + (noise((rows, columns), (20, 20), 5) * 60).astype(int)) % 11 < 2)
    )
    sheet.paste(70, (0, 0), Image.fromarray((hatch * 255).astype(np.uint8)))
    rng = np.random.default_rng(seed)
    for px, py in rng.uniform((0.05, 0.05), (0.95, 0.95), (170, 2)):
        if level[int(py * rows), int(px * columns)] < -0.03:
            centred(
                draw,
                (px * columns, py * rows),
                str(rng.integers(2, 30)),
                max(12, rows // 58),
                fill=60,
            )
    cx, cy, r = columns * 0.30, rows * 0.30, rows * 0.17
    for k in range(32):
        angle = 2 * np.pi * k / 32
        reach = r * (6 if k % 4 == 0 else 1)
        draw.line(
            (cx, cy, cx + np.cos(angle) * reach, cy + np.sin(angle) * reach),
            fill=110 if k % 4 == 0 else 60,
            width=1 if k % 4 == 0 else 2,
        )
    for share in (1.0, 0.9, 0.5):
        draw.ellipse(
            (cx - r * share, cy - r * share, cx + r * share, cy + r * share), outline=40, width=2
        )
    box = (columns * 0.55, rows * 0.08, columns * 0.93, rows * 0.30)
    draw.rectangle(box, fill=255)
    centred(
        draw,
        ((box[0] + box[2]) / 2, rows * 0.14),
        title,
        rows // 17,
        fill=15,
        name="DejaVuSerif-Bold",
    )
    centred(
        draw,
        ((box[0] + box[2]) / 2, rows * 0.20),
        "and its Approaches",
        rows // 26,
        fill=30,
        name="DejaVuSerif-Italic",
    )
    centred(draw, ((box[0] + box[2]) / 2, rows * 0.25), "Soundings in Fathoms", rows // 34, fill=40)
    for inset, width in ((12, 5), (24, 2), (40, 2)):
        draw.rectangle((inset, inset, columns - inset, rows - inset), outline=20, width=width)
    for k in range(0, columns, 40):
        draw.rectangle((24 + k, 24, 24 + k + 20, 40), fill=30)
        draw.rectangle((24 + k, rows - 40, 24 + k + 20, rows - 24), fill=30)
    return sheet
