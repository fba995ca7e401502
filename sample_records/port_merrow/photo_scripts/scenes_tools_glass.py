"""Box B-027: artificial horizon, bait jar and compass card."""

from __future__ import annotations

import numpy as np
import shapely
from catalogue import picture
from materials import BRASS, IRON, OLD_BRASS, coated, metal, pane
from meshes import joined, lathe, rounded, tube
from prints import compass_rose
from ropes import HEMP, laid_rope
from shapely.geometry import Polygon
from shapes import curve, disc
from slabs import box, slab
from studio import Part, View
from textures import clouds, mix, noise, speckled, wood


@picture(
    "X.112_front.jpg",
    View(height_deg=27, side_deg=-24, light_deg=-80, ground=0.60, depth=9, seed=6),
    samples=16,
)
def artificial_horizon() -> list[Part]:
    """Set the trough under its glazed roof, the mercury bottle beside it."""
    outer = shapely.box(-8, -4.6, 8, 4.6).buffer(0.4, quad_segs=8)
    iron = metal(
        mix(IRON, (0.36, 0.24, 0.17), clouds((512, 512), 50, 6) ** 3), rough=0.5, share=0.7
    )
    trough = joined([slab(outer, 0.4, 0.08), slab(outer.difference(outer.buffer(-0.5)), 2.0, 0.1)])
    parts = [
        Part(trough, iron),
        Part(box(15.4, 8.6, 0.1, 0.01).moved(z=1.1), metal((0.86, 0.87, 0.88), rough=0.04)),
    ]
    rise, half, span = 5.4, 4.3, 7.4
    slope = float(np.degrees(np.arctan2(rise, half)))
    length = float(np.hypot(rise, half))
    frame = shapely.box(-span, 0, span, length)
    glazing = frame.difference(shapely.box(-span + 0.6, 0.6, span - 0.6, length - 0.6))
    wooden = coated(wood((0.50, 0.27, 0.14), (0.28, 0.13, 0.07), seed=6), gloss=0.6, coat=0.4)
    for side in (0, 180):
        leaf = slab(glazing, 0.45, 0.06).turned("x", slope).moved(y=-half, z=2.0).turned("z", side)
        sheet = (
            box(2 * span - 1, length - 1, 0.02, 0.002)
            .moved(y=length / 2, z=0.2)
            .turned("x", slope)
            .moved(y=-half, z=2.0)
            .turned("z", side)
        )
        parts += [Part(leaf, wooden), Part(sheet, pane((0.93, 0.97, 0.95)))]
    gable = (
        slab(Polygon([(-half, 0), (half, 0), (0, rise)]), 0.35, 0.05)
        .turned("x", 90)
        .turned("z", 90)
    )
    parts += [
        Part(gable.moved(x=-span - 0.05, z=2.0), wooden),
        Part(gable.moved(x=span - 0.3, z=2.0), wooden),
    ]
    bottle = lathe(
        rounded(
            [
                (0, 0),
                (1.7, 0),
                (1.9, 0.3),
                (1.9, 4.8),
                (0.9, 6.0),
                (0.8, 6.9),
                (1.1, 7.1),
                (1.1, 7.5),
                (0, 7.5),
            ],
            reach=0.25,
        )
    )
    stopper = lathe(rounded([(0.75, 0), (0.8, 0.5), (1.1, 0.8), (1.0, 1.5), (0, 1.7)]))
    parts += [
        Part(bottle.moved(11.4, -3.2), iron),
        Part(
            stopper.moved(11.4, -3.2, 7.5),
            coated(wood((0.80, 0.64, 0.40), (0.6, 0.42, 0.22), seed=2), gloss=0.5),
        ),
    ]
    return parts


@picture(
    "1954.3.19_front.jpg",
    View(height_deg=20, portrait=True, light_deg=-50, ground=0.58, seed=7, bar_left=True),
)
def bait_jar() -> list[Part]:
    """Stand the jar up with its rope handle fallen to one side."""
    jar = lathe(
        rounded(
            [
                (0, 0),
                (3.9, 0),
                (4.3, 0.35),
                (4.45, 6.8),
                (3.5, 9.4),
                (3.2, 10.1),
                (3.75, 10.5),
                (3.8, 11.5),
                (3.3, 11.8),
                (2.9, 10.8),
                (2.9, 9),
            ],
            reach=0.3,
        )
    )
    glaze = speckled((0.66, 0.50, 0.32), (0.34, 0.21, 0.11), seed=21, amount=0.07)
    rows = np.linspace(0, 1, 1024)[:, None, None]
    dipped = mix(
        glaze,
        glaze * np.array([0.56, 0.42, 0.32]),
        np.clip((0.42 - rows[..., 0] + 0.05 * noise((1024, 1024), (30, 60), 2)) * 9, 0, 1),
    )
    ears = [
        lathe([(0.5, -0.25), (0.72, 0), (0.5, 0.25), (0.3, 0), (0.5, -0.25)], 40)
        .turned("y", 90)
        .moved(s * 3.55, 0, 10.1)
        for s in (1, -1)
    ]
    rope = tube(
        curve(
            [
                [3.7, 0, 10.1],
                [4.6, -1.6, 10.6],
                [3.9, -4.4, 8.3],
                [0.5, -5.2, 6.6],
                [-3.4, -4.6, 8.1],
                [-4.6, -1.6, 10.5],
                [-3.7, 0, 10.1],
            ],
            260,
        ),
        0.27,
        lay=1.5,
    )
    knots = [
        lathe(rounded([(0, -0.5), (0.5, -0.4), (0.55, 0.3), (0, 0.5)], reach=0.45), 40).moved(
            s * 3.95, -0.5, 10.3
        )
        for s in (1, -1)
    ]
    return [
        Part(joined([jar, *ears]), coated(dipped, gloss=0.78, coat=0.7)),
        Part(joined([rope, *knots]), laid_rope(HEMP)),
    ]


@picture("2003.8.1_front.jpg", View(height_deg=74, side_deg=0, light_deg=-40, ground=0.56, seed=8))
def compass_card() -> list[Part]:
    """Lay the card face up."""
    card = slab(disc(6.9), 0.12, 0.03)
    cap = lathe(rounded([(0.85, 0), (0.8, 0.25), (0.45, 0.45), (0.3, 0.9), (0, 1.0)]))
    ring = slab(disc(6.95).difference(disc(6.75)), 0.22, 0.04)
    face = compass_rose()
    return [
        Part(card, coated(face, gloss=0.45, coat=0.3)),
        Part(cap.moved(z=0.12), metal(OLD_BRASS, rough=0.3)),
        Part(ring, metal(BRASS, rough=0.3)),
    ]
