"""Drawer D-11: the dispensary."""

from __future__ import annotations

import numpy as np
import shapely
from catalogue import picture
from materials import bumped, coated, glass, matt, water
from meshes import box, joined, lathe, rounded, slab
from PIL import Image, ImageDraw
from prints import label
from shapely.geometry import Polygon
from shapes import ball, disc
from studio import Part, View
from textures import centred, clouds, mix, noise, plain, wood

FLUIDS = (
    (0.80, 0.50, 0.14),
    (0.92, 0.78, 0.36),
    (0.94, 0.95, 0.90),
    (0.62, 0.20, 0.08),
    (0.44, 0.62, 0.36),
    (0.90, 0.84, 0.66),
)


def phial(
    height: float,
    radius: float,
    fill: float,
    fluid: tuple[float, float, float],
    *,
    wax: tuple[float, float, float],
) -> list[Part]:
    """Return a stoppered, waxed vial with fluid up to a share of its height."""
    neck = height * 0.84
    shape = rounded(
        [
            (0, 0),
            (radius * 0.9, 0),
            (radius, 0.12),
            (radius, neck * 0.88),
            (radius * 0.55, neck),
            (radius * 0.55, height * 0.95),
            (radius * 0.72, height),
        ],
        reach=0.25,
    )
    outer = [*shape, (radius * 0.4, height)]
    inner = [(max(r - 0.09, 0), 0.12 + z * 0.97) for r, z in shape]
    wall = lathe([*outer, *inner[::-1]], 64)
    level = [(max(r - 0.015, 0), z) for r, z in inner if z < neck * fill]
    body = lathe([*level, (level[-1][0] * 0.98, neck * fill), (0, neck * fill - 0.05)], 48)
    cap = lathe(
        rounded(
            [
                (radius * 0.76, height - 0.5),
                (radius * 0.86, height - 0.35),
                (radius * 0.84, height + 0.25),
                (radius * 0.5, height + 0.5),
                (0, height + 0.5),
            ],
            reach=0.3,
        ),
        48,
    )
    return [
        Part(wall, glass((0.97, 0.99, 0.98))),
        Part(body, water(fluid)),
        Part(cap, coated(wax, gloss=0.6, coat=0.3)),
    ]


@picture(
    "X.204_front.jpg",
    View(height_deg=23, side_deg=-16, light_deg=-72, ground=0.62, depth=12, seed=80),
    samples=24,
)
def vials() -> list[Part]:
    """Stand twelve vials in two rows in their rack."""
    pine = coated(wood((0.72, 0.54, 0.34), (0.52, 0.36, 0.2), seed=5, rings=6), gloss=0.3)
    holes = shapely.unary_union(
        [disc(1.22, -7.0 + 2.8 * k, y) for k in range(6) for y in (-1.5, 1.5)]
    )
    deck = slab(shapely.box(-9, -3.1, 9, 3.1).difference(holes), 0.6, 0.06)
    rack = [
        box(18, 6.2, 0.8, 0.08),
        deck.moved(z=3.8),
        *[box(0.7, 6.2, 4.4, 0.06).moved(s * 8.65) for s in (-1, 1)],
    ]
    parts = [Part(joined(rack), pine)]
    rng = np.random.default_rng(4)
    for k in range(6):
        for y in (-1.5, 1.5):
            fluid = FLUIDS[int(rng.integers(0, len(FLUIDS)))]
            fill = 0.30 if (k, y) in ((1, -1.5), (4, 1.5)) else float(rng.uniform(0.72, 0.86))
            wax = ((0.46, 0.07, 0.06), (0.10, 0.09, 0.09))[int(rng.integers(0, 2))]
            parts.extend(Part(
                        part.mesh.turned("z", 30.0 * k).moved(-7.0 + 2.8 * k, y, 0.85),
                        part.material,
                    ) for part in phial(8.2, 1.05, fill, fluid, wax=wax))
    return parts


@picture(
    "1959.40.8_front.jpg",
    View(height_deg=52, side_deg=-12, light_deg=-45, ground=0.58, depth=9, seed=81),
    samples=14,
)
def tablet_tube() -> list[Part]:
    """Lay the tube with its cork out and a few tablets in it."""
    line = rounded(
        [(0, 0), (0.5, 0.02), (0.6, 0.15), (0.6, 5.2), (0.66, 5.35), (0.66, 5.5), (0.52, 5.5)],
        reach=0.3,
    )
    wall = lathe([*line, *[(max(r - 0.06, 0), z + 0.06) for r, z in reversed(line[:-1])]], 64)
    pill = lathe(
        rounded([(0, 0), (0.38, 0), (0.42, 0.06), (0.42, 0.2), (0.38, 0.26), (0, 0.28)], reach=0.3),
        40,
    )
    inside = joined([pill.moved(0, -0.1, 0.12 + 0.3 * k).turned("z", 20 * k) for k in range(8)])
    paper = lathe([(0.612, 1.4), (0.612, 4.6)], 64)
    text = label(
        (520, 440),
        [("HYPODERMIC", 54), ("TABLETS", 54), ("gr. 1/4", 60), ("POISON", 50)],
        seed=6,
        colour=(0.90, 0.85, 0.72),
        ink=(0.42, 0.06, 0.06),
    )
    wrap = np.concatenate([text, np.full((440, 700, 3), (0.86, 0.80, 0.66))], axis=1)
    lay = [
        m.turned("z", 132).turned("y", 90).turned("z", 12).moved(-2.7, -0.3, 0.67)
        for m in (wall, inside, paper)
    ]
    cork = (
        lathe([(0, 0), (0.44, 0.01), (0.5, 0.06), (0.57, 1.0), (0.52, 1.05), (0, 1.06)], 48)
        .turned("x", 88)
        .turned("z", 40)
        .moved(3.9, 0.4, 0.56)
    )
    pits = np.clip((noise((256, 256), (2, 4), 9) - 0.8) * 5, 0, 1)
    loose = joined([pill.moved(3.4, -1.4), pill.moved(2.5, -1.9)])
    white = matt((0.88, 0.87, 0.83))
    return [
        Part(lay[0], glass((0.98, 1, 0.99))),
        Part(lay[1], white),
        Part(loose, white),
        Part(lay[2], matt(np.rot90(wrap, 0))),
        Part(cork, matt(mix((0.72, 0.54, 0.36), (0.38, 0.24, 0.14), pits))),
    ]


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
