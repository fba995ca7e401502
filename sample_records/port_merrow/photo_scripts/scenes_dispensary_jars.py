"""Drawer D-11: poison bottle, mortar and leech jar."""

from __future__ import annotations

import numpy as np
import shapely
from catalogue import picture
from materials import bumped, coated, matt
from meshes import joined, lathe, rounded
from PIL import Image, ImageDraw
from prints import label
from shapely.geometry import Polygon
from shapes import ball
from slabs import slab
from studio import Part, View
from textures import centred, clouds, mix, noise, plain, wood


@picture(
    "1959.40.2_front.jpg",
    View(height_deg=13, side_deg=14, portrait=True, light_deg=-66, ground=0.64, depth=10, seed=82),
    samples=16,
)
def poison_bottle() -> list[Part]:
    """Stand the cobalt bottle, ribbed on three sides, stoppered."""
    hexagon = (
        Polygon([(2.9 * np.cos(a), 2.9 * np.sin(a)) for a in np.radians(np.arange(0, 360, 60))])
        .buffer(-0.3)
        .buffer(0.3, quad_segs=6)
    )
    body = slab(hexagon, 9.7, 0.42)
    shoulder = lathe(
        rounded(
            [
                (2.6, 9.2),
                (2.55, 9.75),
                (2.1, 10.5),
                (1.15, 11.0),
                (1.05, 12.2),
                (1.5, 12.35),
                (1.5, 12.85),
                (0, 12.85),
            ],
            reach=0.3,
        )
    )
    ribs = []
    for side in (210, 270, 330):
        for offset in np.linspace(-1.0, 1.0, 6):
            rib = lathe(
                rounded([(0, 1.0), (0.14, 1.2), (0.14, 8.2), (0, 8.4)], reach=0.3), 16
            ).moved(offset, 2.48)
            ribs.append(rib.turned("z", side - 90))
    stopper = lathe(
        rounded(
            [
                (0.9, 12.8),
                (1.0, 13.0),
                (0.6, 13.2),
                (1.3, 13.6),
                (1.3, 14.2),
                (0.7, 14.6),
                (0, 14.6),
            ],
            reach=0.35,
        )
    )
    blue = coated(
        mix((0.015, 0.045, 0.30), (0.03, 0.11, 0.52), clouds((256, 256), 60, 3)),
        gloss=0.96,
        coat=1.0,
    )
    text = label(
        (330, 640),
        [("NOT TO", 58), ("BE", 58), ("TAKEN", 58)],
        seed=7,
        colour=(0.88, 0.80, 0.62),
        ink=(0.5, 0.05, 0.05),
    )
    paper = (
        slab(shapely.box(-1.05, -2.6, 1.05, 2.6), 0.03, 0.01).turned("x", 90).moved(0, -2.66, 4.9)
    )
    return [Part(joined([body, shoulder, stopper, *ribs]), blue), Part(paper, matt(text))]


@picture(
    "1959.40.11_front.jpg", View(height_deg=30, side_deg=20, light_deg=-55, ground=0.56, seed=83)
)
def mortar() -> list[Part]:
    """Stand the mortar with the pestle leaning in it."""
    bowl = lathe(
        rounded(
            [
                (0, 0),
                (3.6, 0),
                (3.9, 0.3),
                (3.8, 1.0),
                (5.3, 3.4),
                (6.3, 7.6),
                (6.75, 8.9),
                (6.5, 9.2),
                (6.1, 9.0),
                (5.5, 6.4),
                (4.2, 3.2),
                (2.0, 1.9),
                (0, 1.7),
            ],
            reach=0.3,
        )
    )
    pull = np.exp(
        -((np.arctan2(bowl.points[:, 1], bowl.points[:, 0]) + 2.6) ** 2) / 0.06
    ) * np.clip((bowl.points[:, 2] - 7) / 2, 0, 1)
    bowl = type(bowl)(
        bowl.points * np.column_stack([1 + 0.13 * pull, 1 + 0.13 * pull, 1 - 0.04 * pull]),
        bowl.normals,
        bowl.uvs,
        bowl.faces,
    )
    white = plain((0.83, 0.81, 0.76), spread=0.07, seed=4)
    stained = mix(white, (0.60, 0.54, 0.42), np.clip(clouds((512, 512), 40, 9) * 1.4 - 0.85, 0, 1))
    foot = lathe(
        rounded(
            [(0, 0), (1.5, 0.25), (1.9, 1.4), (1.5, 3.2), (1.0, 3.9), (0.9, 4.4), (0, 4.4)],
            reach=0.4,
        )
    )
    grip = lathe(
        rounded(
            [(0.85, 4.4), (1.1, 4.6), (0.95, 7), (1.0, 12), (1.45, 14.8), (1.2, 16.6), (0, 17)],
            reach=0.35,
        )
    )
    lean = [m.turned("y", 46).moved(-2.6, 0.6, 2.5) for m in (foot, grip)]
    return [
        Part(
            joined([bowl, lean[0]]),
            bumped(coated(stained, gloss=0.3), noise((512, 512), (1, 1), 5), depth=0.05),
        ),
        Part(
            lean[1],
            coated(
                np.swapaxes(wood((0.70, 0.50, 0.31), (0.5, 0.32, 0.18), seed=14), 0, 1), gloss=0.5
            ),
        ),
    ]


@picture(
    "1968.12.1_front.jpg",
    View(height_deg=14, portrait=True, light_deg=-60, ground=0.54, seed=84, bar_left=True),
)
def leech_jar() -> list[Part]:
    """Stand the lidded jar, its name on a gilt scroll."""
    body = rounded(
        [
            (0, 0),
            (3.9, 0),
            (4.2, 0.3),
            (4.0, 1.1),
            (3.3, 2.0),
            (3.5, 2.8),
            (5.3, 4.6),
            (5.5, 7.0),
            (5.1, 12.6),
            (4.6, 13.6),
            (4.7, 14.2),
            (4.3, 14.3),
            (4.3, 13),
        ],
        reach=0.3,
    )
    lid = lathe(
        rounded(
            [
                (4.6, 14.3),
                (4.9, 14.4),
                (4.85, 14.9),
                (3.8, 16.0),
                (1.6, 16.7),
                (0.8, 16.9),
                (0.7, 17.3),
                (0, 17.4),
            ],
            reach=0.3,
        )
    )
    knob = lathe(ball(1.0)).scaled(1, 1, 0.85).moved(z=18.1)
    rows, columns = 900, 1800
    v = np.linspace(1, 0, rows)[:, None] * np.ones((1, columns))
    glaze = plain((0.90, 0.885, 0.85), spread=0.03, seed=6, size=1800)[:rows] * np.ones(
        (rows, columns, 1)
    )
    sheet = Image.new("L", (columns, rows), 0)
    draw = ImageDraw.Draw(sheet)
    for y in (165, 190, 690, 735):
        draw.line((0, y, columns, y), fill=255, width=9)
    banner = Image.new("L", (columns, rows), 0)
    pen = ImageDraw.Draw(banner)
    for centre in (450, 1350):
        pen.polygon(
            [
                (centre - 300, 330),
                (centre + 300, 330),
                (centre + 350, 415),
                (centre + 300, 500),
                (centre - 300, 500),
                (centre - 350, 415),
            ],
            fill=255,
        )
    gilt = mix((0.55, 0.40, 0.14), (0.78, 0.62, 0.28), clouds((rows, columns), 30, 8))
    face = mix(
        glaze,
        gilt,
        np.asarray(sheet, dtype=float)
        / 255
        * (0.55 + 0.45 * (clouds((rows, columns), 14, 5) > 0.25)),
    )
    face = mix(face, (0.13, 0.16, 0.14), np.asarray(banner, dtype=float) / 255)
    words = Image.new("L", (columns, rows), 0)
    pen = ImageDraw.Draw(words)
    for centre in (450, 1350):
        centred(pen, (centre, 415), "LEECHES", 106, fill=255, name="DejaVuSerif-Bold")
    face = mix(face, gilt, np.asarray(words, dtype=float) / 255)
    craze = np.abs(2 * clouds((rows, columns), 9, 17) - 1)
    face = mix(face, (0.62, 0.55, 0.42), np.clip(0.05 - craze, 0, 1) * 5 * (v < 2))
    jar = lathe(body).turned("z", 180)
    return [
        Part(jar, coated(face, gloss=0.88, coat=0.8)),
        Part(
            joined([lid, knob]),
            coated(plain((0.90, 0.885, 0.85), spread=0.03, seed=7), gloss=0.88, coat=0.8),
        ),
    ]
