"""Box B-031: compass bowl and lodestone."""

from __future__ import annotations

import numpy as np
import shapely
from catalogue import picture
from materials import BRASS, IRON, bumped, coated, matt, metal, pane
from meshes import joined, lathe, rounded, surface, tube
from prints import compass_rose
from shapes import disc
from slabs import box, slab
from studio import Part, View
from textures import clouds, mix, noise
from wear import worn_brass


@picture(
    "PMM.77.8_front.jpg",
    View(height_deg=36, side_deg=18, light_deg=-70, ground=0.60, depth=7, seed=22),
    samples=16,
)
def compass_bowl() -> list[Part]:
    """Stand the bowl in its gimbal ring."""
    bowl = lathe(
        rounded(
            [
                (0, 0),
                (2.4, 0),
                (2.6, 0.3),
                (4.6, 2.6),
                (5.3, 6.2),
                (5.35, 7.4),
                (5.8, 7.5),
                (5.8, 8.1),
                (5.1, 8.1),
                (5.1, 7.5),
                (5.0, 6.0),
                (0, 6.0),
            ],
            reach=0.2,
        )
    )
    card = slab(disc(4.75), 0.06, 0.01).moved(z=6.5)
    cap = lathe([(0.5, 0), (0.4, 0.25), (0, 0.5)], 48).moved(z=6.56)
    lid = slab(disc(5.1), 0.05, 0.01).moved(z=7.75)
    ring = lathe([(6.6, 5.2), (6.9, 5.2), (6.9, 6.4), (6.6, 6.4), (6.6, 5.2)], 160)
    pins = joined(
        [tube(np.array([[s * 5.2, 0, 5.8], [s * 7.5, 0, 5.8]]), 0.27) for s in (-1, 1)]
        + [tube(np.array([[0, s * 6.7, 5.8], [0, s * 7.6, 5.8]]), 0.27) for s in (-1, 1)]
    )
    rose = 1 - 0.9 * (1 - compass_rose(1200))
    paper = np.clip(0.94 - rose * 0.85, 0, 1) * np.array([1.0, 0.95, 0.84])
    return [
        Part(bowl, metal(worn_brass(9), rough=0.28)),
        Part(card, matt(paper)),
        Part(cap, metal(BRASS, rough=0.2)),
        Part(lid, pane()),
        Part(joined([ring, pins]), metal(worn_brass(12), rough=0.3)),
    ]


@picture(
    "PMM.77.9_front.jpg",
    View(height_deg=24, side_deg=-22, light_deg=-45, portrait=True, ground=0.63, seed=23),
)
def lodestone() -> list[Part]:
    """Stand the mounted stone on its keeper."""
    rough = 0.75 + 0.25 * noise((256, 256), (5, 5), 6)
    v, u = np.mgrid[0:120, 0:161] / np.array([119, 160])[:, None, None]
    polar, turn = np.pi * v, 2 * np.pi * u
    bumps = 1 + 0.07 * np.take(
        np.take(clouds((256, 256), 26, 8) - 0.5, (v[:, 0] * 255).astype(int), 0),
        (u[0] * 255).astype(int),
        1,
    )
    power = [
        np.sign(w) * np.abs(w) ** 0.55
        for w in (np.sin(polar) * np.cos(turn), np.sin(polar) * np.sin(turn), -np.cos(polar))
    ]
    stone = surface(
        np.stack(
            [2.45 * power[0] * bumps, 1.75 * power[1] * bumps, 2.3 * power[2] * bumps + 3.6], axis=2
        ),
        around=(False, True),
    )
    bands = []
    for x in (-1.55, 1.55):
        loop = shapely.box(-1.95, 1.1, 1.95, 6.05).buffer(0.12)
        bands.append(
            slab(loop.difference(loop.buffer(-0.2)), 0.75, 0.05)
            .turned("x", 90)
            .turned("z", 90)
            .moved(x=x - 0.37)
        )
    feet = joined([box(1.1, 2.2, 0.9, 0.08).moved(x=x, z=0.75) for x in (-1.55, 1.55)])
    cap = box(4.0, 2.4, 0.3, 0.08).moved(z=6.05)
    loop = tube(
        np.column_stack(
            [
                0.65 * np.cos(np.linspace(0, 2 * np.pi, 60)),
                np.zeros(60),
                6.95 + 0.65 * np.sin(np.linspace(0, 2 * np.pi, 60)),
            ]
        ),
        0.14,
    )
    keeper = box(5.4, 1.9, 0.65, 0.12)
    dark = mix((0.10, 0.095, 0.09), (0.25, 0.20, 0.16), clouds((256, 256), 20, 4) ** 2)
    return [
        Part(stone, bumped(coated(dark, gloss=0.35), rough, depth=0.6)),
        Part(joined([*bands, cap, loop]), metal(worn_brass(15), rough=0.25)),
        Part(joined([feet, keeper]), metal(IRON, rough=0.45, share=0.8)),
    ]
