"""Box B-031: chart- and compass-maker's bench, glass, stoneware, wood."""

from __future__ import annotations

import numpy as np
from catalogue import picture
from materials import BRASS, bumped, coated, glass, matt, metal
from meshes import joined, lathe, rounded, tube
from prints import label
from shapely.geometry import Polygon
from shapes import disc
from slabs import slab
from studio import Part, View
from textures import clouds, mix, noise, plain, speckled, wood


@picture(
    "1964.30.2_front.jpg",
    View(height_deg=62, side_deg=-35, light_deg=-50, ground=0.62, depth=9, seed=30, bar_left=True),
    samples=16,
)
def magnifier() -> list[Part]:
    """Lay the magnifier down, lens to the left."""
    t = np.linspace(0, 2 * np.pi, 40)
    rim = lathe([(3.35 + 0.28 * np.cos(a), 0.45 + 0.42 * np.sin(a)) for a in t])
    bow = np.linspace(0, 3.15, 24)
    top = [(float(r), 0.45 + 0.30 - 0.03 * float(r) ** 2 + 0.08) for r in bow]
    lens = lathe([(r, 0.9 - z) for r, z in top] + [(r, z) for r, z in reversed(top)])
    ferrule = (
        lathe(rounded([(0.3, 3.4), (0.55, 3.6), (0.5, 4.6), (0.75, 4.8), (0.7, 5.3), (0, 5.3)]))
        .turned("y", 90)
        .moved(z=0.62)
    )
    handle = (
        lathe(
            rounded(
                [
                    (0, 5.2),
                    (0.6, 5.2),
                    (0.85, 7.4),
                    (0.62, 9.2),
                    (0.8, 11.4),
                    (0.55, 12.6),
                    (0, 12.8),
                ],
                reach=0.4,
            )
        )
        .turned("y", 90)
        .moved(z=0.72)
    )
    streak = noise((512, 512), (30, 1.5), 6)
    horn = mix((0.16, 0.10, 0.06), (0.58, 0.41, 0.22), streak * clouds((512, 512), 80, 2))
    return [
        Part(joined([rim, ferrule]), metal(BRASS, rough=0.25)),
        Part(lens.moved(z=0.05), glass((0.97, 1.0, 0.98))),
        Part(handle, coated(horn, gloss=0.75, coat=0.6)),
    ]


@picture(
    "1988.17.5_front.jpg", View(height_deg=15, light_deg=-48, portrait=True, ground=0.60, seed=31)
)
def ink_bottle() -> list[Part]:
    """Stand the bottle up, its cork lying before it."""
    body = lathe(
        rounded(
            [
                (0, 0),
                (2.9, 0),
                (3.1, 0.25),
                (3.1, 8.6),
                (2.7, 9.6),
                (1.35, 10.7),
                (1.15, 11.6),
                (1.6, 12.0),
                (1.65, 12.7),
                (1.2, 13),
                (0.9, 12.6),
                (0.9, 11),
            ],
            reach=0.3,
        )
    )
    glaze = speckled((0.50, 0.30, 0.16), (0.22, 0.12, 0.07), seed=33, amount=0.08)
    rows = np.linspace(1, 0, 1024)[:, None]
    tone = mix(
        glaze,
        speckled((0.68, 0.57, 0.42), (0.36, 0.24, 0.14), seed=34, amount=0.05),
        np.clip((0.36 + 0.03 * clouds((1024, 1024), 90, 3) - rows) * 40, 0, 1),
    )
    lip = (
        lathe(rounded([(0, 0), (0.4, 0.1), (0.5, 0.5), (0, 0.7)]), 32)
        .turned("x", 80)
        .moved(0, -1.3, 12.2)
    )
    cork = lathe([(0, 0), (0.78, 0.02), (0.84, 0.1), (0.98, 1.9), (0.92, 2.0), (0, 2.02)])
    pits = np.clip((noise((256, 256), (2, 4), 9) - 0.8) * 5, 0, 1)
    return [
        Part(joined([body, lip]), coated(tone, gloss=0.8, coat=0.6)),
        Part(
            cork.turned("y", 84).turned("z", 25).moved(3.7, -2.2, 0.95),
            coated(mix((0.72, 0.54, 0.36), (0.38, 0.24, 0.14), pits), gloss=0.1),
        ),
    ]


@picture(
    "X.87_front.jpg",
    View(height_deg=33, side_deg=0, light_deg=-58, ground=0.58, seed=32, bar_left=True),
)
def pigment_tin() -> list[Part]:
    """Stand the tin open, its lid leaning on the side, powder on the rim."""
    wall = lathe(
        rounded(
            [
                (0, 0),
                (3.55, 0),
                (3.7, 0.12),
                (3.7, 6.0),
                (3.45, 6.1),
                (3.45, 6.75),
                (3.36, 6.75),
                (3.36, 1.0),
            ],
            reach=0.1,
        )
    )
    sheet = mix((0.55, 0.54, 0.52), (0.33, 0.26, 0.2), clouds((512, 512), 40, 3) ** 2)
    front = label(
        (720, 420),
        [("VERMILION", 92), ("FINE GROUND", 40), ("poison", 46), ("Merrow Colour Works", 34)],
        seed=4,
        colour=(0.87, 0.78, 0.58),
    )
    band = np.concatenate([front, front, front], axis=1)
    stains = np.clip((clouds(band.shape[:2], 30, 6) - 0.72) * 3, 0, 0.7)
    band = mix(band, (0.62, 0.13, 0.07), stains)
    paper = lathe([(3.715, 0.55), (3.715, 5.5)]).turned("z", -150)
    powder = lathe([(0, 5.1), (1.2, 5.0), (2.4, 4.6), (3.3, 4.3)])
    dust = plain((0.78, 0.16, 0.08), spread=0.12, seed=6)
    cover = lathe(
        rounded(
            [(0, 1.0), (3.5, 1.0), (3.68, 0.9), (3.68, 0), (3.6, 0), (3.6, 0.8), (0, 0.85)][::-1],
            reach=0.12,
        )
    )
    rim = lathe([(3.47, 6.77), (3.40, 6.84), (3.34, 6.77)])
    tin = metal(sheet, rough=0.42, share=0.75 * np.ones((4, 4)))
    grains = bumped(matt(dust), noise((512, 512), (1.5, 1.5), 3), depth=0.15)
    return [
        Part(joined([wall, cover.turned("x", 12).turned("y", 70).moved(4.45, -0.4, 3.45)]), tin),
        Part(paper, coated(band, gloss=0.2)),
        Part(powder, grains),
        Part(rim, grains),
    ]


@picture(
    "PMM.80.15_front.heic",
    View(height_deg=11, side_deg=14, light_deg=-70, portrait=True, ground=0.62, depth=12, seed=33),
    samples=18,
)
def log_glass() -> list[Part]:
    """Stand the sandglass up, most of the sand run through."""
    half = [
        (0.18, 6.4),
        (0.28, 6.9),
        (1.1, 7.7),
        (1.95, 8.9),
        (2.05, 10.2),
        (1.5, 11.2),
        (0.6, 11.65),
        (0, 11.7),
    ]
    curve_out = rounded(half, reach=0.45)
    whole = [(r, 12.8 - z) for r, z in reversed(curve_out)] + curve_out
    inner = [(max(r - 0.09, 0.0), 6.4 + (z - 6.4) * 0.985) for r, z in whole]
    outer, hollow = lathe(whole), lathe(inner[::-1])
    sand_line = [(r - 0.02, z) for r, z in inner if z < 3.6]
    sand = lathe([*sand_line, (0.9, 4.0), (0, 4.75)])
    upper = lathe(
        [(0.02, 6.8)] + [(max(r - 0.02, 0), z) for r, z in inner if 6.85 < z < 7.7] + [(0, 7.35)]
    )
    thread = tube(
        np.column_stack(
            [
                0.42 * np.cos(np.linspace(0, 44, 500)),
                0.42 * np.sin(np.linspace(0, 44, 500)),
                np.linspace(5.85, 6.95, 500),
            ]
        ),
        0.1,
        10,
    )
    plate = rounded(
        [(0, 0), (3.3, 0), (3.5, 0.15), (3.5, 0.35), (3.2, 0.6), (2.9, 0.75), (0, 0.75)], reach=0.2
    )
    ends = [lathe(plate), lathe([(r, 12.8 - z) for r, z in reversed(plate)])]
    pillar = lathe(
        rounded(
            [
                (0.2, 0.7),
                (0.34, 0.8),
                (0.34, 1.2),
                (0.18, 1.5),
                (0.3, 3.2),
                (0.2, 5.6),
                (0.38, 6.1),
                (0.38, 6.7),
                (0.2, 7.2),
                (0.3, 9.6),
                (0.18, 11.3),
                (0.34, 11.6),
                (0.34, 12.0),
                (0.2, 12.1),
            ],
            reach=0.3,
        ),
        40,
    )
    posts = [
        pillar.moved(2.85 * np.cos(a), 2.85 * np.sin(a))
        for a in np.radians([20, 92, 164, 236, 308])
    ]
    mahogany = coated(wood((0.44, 0.21, 0.12), (0.24, 0.10, 0.06), seed=13), gloss=0.65, coat=0.5)
    grit = matt(plain((0.80, 0.66, 0.47), spread=0.2, seed=5, blob=3), (3, 3))
    return [
        Part(outer, glass((0.96, 0.99, 0.97))),
        Part(hollow, glass((1.0, 1.0, 1.0))),
        Part(joined([sand, upper]), grit),
        Part(thread, matt((0.74, 0.68, 0.55))),
        Part(joined([*ends, *posts]), mahogany),
    ]


@picture(
    "2015.6.1_front.webp",
    View(height_deg=66, side_deg=-9, light_deg=-42, ground=0.55, warmth=0.4, seed=34),
)
def set_square() -> list[Part]:
    """Lay the set square flat."""
    triangle = Polygon([(-7, -7), (7, -7), (-7, 7)]).buffer(-0.1).buffer(0.1)
    square = triangle.difference(disc(1.9, -2.9, -2.9)).difference(disc(0.35, -6.0, 4.2))
    pear = wood((0.80, 0.58, 0.42), (0.66, 0.43, 0.29), seed=41, rings=7) * (
        0.85 + 0.15 * clouds((1024, 1024), 150, 4)[..., None]
    )
    inky = np.clip((clouds((1024, 1024), 22, 77) - 0.9) * 9, 0, 0.8)
    return [
        Part(
            slab(square, 0.4, 0.05),
            coated(mix(pear, (0.12, 0.12, 0.2), inky), gloss=0.45, coat=0.15),
        )
    ]
