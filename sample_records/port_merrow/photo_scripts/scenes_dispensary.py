"""Drawer D-11: vials and tablet tube."""

from __future__ import annotations

import numpy as np
import shapely
from catalogue import picture
from materials import coated, glass, matt, water
from meshes import joined, lathe, rounded
from prints import label
from shapes import disc
from slabs import box, slab
from studio import Part, View
from textures import mix, noise, wood

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
            parts += [
                Part(part.mesh.turned("z", 30.0 * k).moved(-7.0 + 2.8 * k, y, 0.85), part.material)
                for part in phial(8.2, 1.05, fill, fluid, wax=wax)
            ]
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
