"""Box B-027: netting needle and harbour master's seal."""

from __future__ import annotations

import numpy as np
from catalogue import picture
from materials import BRASS, OLD_BRASS, coated, metal
from meshes import joined, lathe, relief, rounded, tube
from prints import seal_face
from ropes import laid_rope
from shapely.geometry import Polygon
from shapes import curve
from slabs import slab
from studio import Part, View
from textures import clouds, mix, noise, wood


@picture(
    "2011.40.6_front.jpg",
    View(height_deg=70, side_deg=-8, light_deg=-55, ground=0.52, seed=9, bar_left=True),
)
def netting_needle() -> list[Part]:
    """Lay the needle with a little twine left on it."""
    upper = [(8, 0), (6.4, 0.75), (4.2, 1.15), (-7.0, 1.15), (-8, 0.95), (-7.2, 0.45), (-6.6, 0)]
    outline = (
        Polygon(upper + [(x, -y) for x, y in reversed(upper[1:-1])]).buffer(0.12).buffer(-0.06)
    )
    window = Polygon([(5.4, 0.45), (0.6, 0.72), (0.6, -0.72), (5.4, -0.45)]).buffer(0.12)
    tongue = Polygon([(0.4, 0.22), (4.3, 0.13), (4.6, 0), (4.3, -0.13), (0.4, -0.22)])
    bone = mix((0.87, 0.80, 0.64), (0.66, 0.54, 0.36), clouds((512, 512), 60, 3) ** 2 * 0.8)
    streaks = np.clip((noise((512, 512), (0.9, 30), 4) - 0.75) * 3, 0, 1)
    needle = slab(outline.difference(window).union(tongue), 0.38, 0.13)
    winds = []
    for k in range(5):
        y = -0.5 + 0.25 * k
        winds.append(
            curve(
                [[-7.0, y, 0.44], [-3, y * 0.9, 0.46], [0.2, y * 0.5, 0.46], [1.6, y * 0.25, 0.4]],
                120,
            )
        )
    tail = curve(
        [
            [-6.6, 0.3, 0.45],
            [-8.6, 0.9, 0.2],
            [-9.4, 2.4, 0.13],
            [-6.8, 3.3, 0.13],
            [-4.2, 2.6, 0.13],
            [-2.6, 3.4, 0.13],
        ],
        200,
    )
    twine = joined([tube(p, 0.1, 14, lay=4.0) for p in (*winds, tail)])
    return [
        Part(needle, coated(mix(bone, (0.5, 0.38, 0.22), streaks * 0.6), gloss=0.6)),
        Part(twine, laid_rope((0.50, 0.36, 0.22))),
    ]


def _seal() -> list[Part]:
    handle = lathe(
        rounded(
            [
                (0, 8.8),
                (1.0, 8.7),
                (1.55, 7.6),
                (1.3, 6.2),
                (0.75, 5.0),
                (0.7, 4.0),
                (1.05, 3.2),
                (1.0, 2.7),
                (0.9, 2.5),
            ][::-1],
            reach=0.4,
        )
    )
    brass = lathe(
        rounded(
            [
                (0, 0),
                (1.95, 0),
                (2.05, 0.12),
                (2.05, 0.7),
                (1.7, 0.95),
                (0.85, 1.25),
                (0.8, 1.9),
                (1.1, 2.2),
                (1.1, 2.6),
                (0, 2.6),
            ],
            reach=0.22,
        )
    )
    tone = mix(OLD_BRASS, BRASS, clouds((512, 512), 40, 11))
    return [
        Part(
            handle,
            coated(
                np.swapaxes(wood((0.47, 0.26, 0.14), (0.27, 0.13, 0.07), seed=15), 0, 1),
                gloss=0.66,
                coat=0.5,
            ),
        ),
        Part(brass, metal(tone, rough=0.26)),
    ]


@picture(
    "L2019.4_front.jpg",
    View(height_deg=16, side_deg=8, portrait=True, light_deg=-62, ground=0.62, seed=10),
)
def seal_standing() -> list[Part]:
    """Stand the seal on its die."""
    return _seal()


@picture("L2019.4_back.jpg", View(height_deg=62, side_deg=0, light_deg=-75, ground=0.60, seed=11))
def seal_die() -> list[Part]:
    """Lay the seal on its side, and beside it an impression in wax."""
    heights, opacity = seal_face()
    wax = relief(heights * 0.16 + 0.28 * opacity, opacity, (5.0, 5.0)).moved(3.4, 0.4)
    lying = [
        Part(p.mesh.turned("y", 90).turned("z", 200).moved(0.2, 1.2, 2.05), p.material)
        for p in _seal()
    ]
    return [*lying, Part(wax, coated((0.55, 0.07, 0.06), gloss=0.6, coat=0.3))]
