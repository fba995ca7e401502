"""Box B-042: lens, shutter release and album of the studio in Quay Street."""

from __future__ import annotations

import numpy as np
import shapely
from catalogue import picture
from materials import BRASS, OLD_BRASS, bumped, coated, matt, metal
from meshes import joined, lathe, rounded, tube
from PIL import ImageDraw
from ropes import laid_rope
from shapes import ball, curve, disc
from slabs import box, slab
from studio import Part, View
from textures import aged_paper, array_of, canvas, clouds, mix, noise, plain


@picture(
    "1987.412.9_front.jpg",
    View(height_deg=26, side_deg=32, light_deg=-75, ground=0.62, depth=8, seed=63),
    samples=14,
)
def portrait_lens() -> list[Part]:
    """Lay the lens on its side, glass toward us; the cap lies in front."""
    barrel = lathe(
        rounded(
            [
                (2.6, 0),
                (3.6, 0),
                (3.7, 0.2),
                (3.7, 1.0),
                (3.2, 1.2),
                (3.1, 4.5),
                (3.6, 4.6),
                (3.6, 5.4),
                (3.1, 5.5),
                (3.1, 10.5),
                (4.2, 11.0),
                (4.3, 11.3),
                (4.3, 13.9),
                (4.15, 14.2),
                (3.95, 14.1),
                (3.7, 11.8),
                (0, 11.7),
            ],
            reach=0.1,
        )
    )
    flange = slab(
        disc(5.0)
        .difference(disc(3.0))
        .difference(
            shapely.unary_union(
                [disc(0.2, 4.4 * np.cos(a), 4.4 * np.sin(a)) for a in np.radians([30, 150, 270])]
            )
        ),
        0.35,
        0.06,
    ).moved(z=2.6)
    bulge = [(r, 12.3 + 0.9 - 0.065 * r * r) for r in np.linspace(0, 3.7, 30)]
    front = lathe(bulge[::-1])
    dark = lathe([(3.8, 11.85), (0, 11.8)])
    rack = box(0.5, 0.7, 4.4, 0.05).moved(3.3, 0, 6.0)
    knob = joined(
        [
            lathe(
                rounded(
                    [(0, 0), (1.1, 0), (1.2, 0.15), (1.2, 0.75), (1.1, 0.9), (0, 0.9)], reach=0.1
                ),
                60,
            )
            .turned("x", 90)
            .moved(3.9, -1.1, 7.6),
            tube(np.array([[3.9, -1.3, 7.6], [3.9, 1.2, 7.6]]), 0.25),
        ]
    )
    turn = [
        m.turned("x", 90).turned("y", 90).turned("z", 0).moved(0, 7.2, 5.0)
        for m in (barrel, flange, front, dark, rack, knob)
    ]
    brass = metal(mix(OLD_BRASS, BRASS, clouds((512, 512), 60, 6)), rough=0.24)
    cap = lathe(
        rounded(
            [(0, 1.5), (4.0, 1.5), (4.45, 1.35), (4.5, 1.1), (4.5, 0), (4.4, 0)][::-1], reach=0.15
        )
    )
    leather = coated(plain((0.17, 0.07, 0.06), spread=0.3, seed=3, blob=20), gloss=0.45)
    return [
        Part(joined([turn[0], turn[1], turn[4], turn[5]]), brass),
        Part(turn[2], coated((0.03, 0.035, 0.05), gloss=0.97, coat=1.0)),
        Part(turn[3], matt((0.02, 0.02, 0.02))),
        Part(cap.moved(-8.0, -3.2), leather),
    ]


@picture(
    "1987.412.10a_front.jpg",
    View(height_deg=48, side_deg=6, light_deg=-52, ground=0.63, seed=64, bar_left=True),
)
def shutter_release() -> list[Part]:
    """Lay the bulb down, its tube in a loose loop."""
    shape = [(max(r, 0.0), z) for r, z in ball(2.6)]
    bulb = lathe([*[(r, z * 1.25) for r, z in shape][:-3], (0.75, 3.3), (0.65, 4.3), (0.62, 4.6)])
    rubber = coated(
        mix((0.30, 0.12, 0.09), (0.44, 0.24, 0.18), clouds((512, 512), 40, 8)), gloss=0.32
    )
    cracks = np.abs(2 * clouds((512, 512), 12, 4) - 1)
    ring = lathe([(0.7, 4.3), (0.85, 4.4), (0.85, 5.0), (0.7, 5.1)])
    put = [m.turned("y", 82).turned("z", 168).moved(-4, -1.5, 2.6) for m in (bulb, ring)]
    path = curve(
        [
            [-8.2, -0.6, 2.9],
            [-11.0, 1.2, 0.9],
            [-9.6, 5.2, 0.45],
            [-3, 7.4, 0.45],
            [5, 6.2, 0.45],
            [8.2, 2.2, 0.45],
            [5.4, -1.4, 0.45],
            [1.6, 1.2, 0.45],
            [3.6, 4.8, 0.5],
            [9.8, 4.6, 1.2],
            [13.2, 1.4, 0.45],
            [12.8, -2.0, 0.45],
        ],
        500,
    )
    tip = (
        lathe(rounded([(0.5, 0), (0.62, 0.1), (0.62, 0.9), (0.35, 1.1), (0.35, 2.0), (0, 2.0)]))
        .turned("x", 90)
        .moved(12.8, -2.0, 0.5)
    )
    return [
        Part(put[0], bumped(rubber, np.clip(cracks * 4, 0, 1), depth=0.12)),
        Part(tube(path, 0.42, 24), rubber),
        Part(joined([put[1], tip]), metal(OLD_BRASS, rough=0.3)),
    ]


@picture(
    "1987.412.11_front.jpg", View(height_deg=52, side_deg=-14, light_deg=-60, ground=0.58, seed=65)
)
def album() -> list[Part]:
    """Lay the lacquer album flat: a crane, a moon and a pine in gold."""
    rows, columns = 1100, 1500
    lacquer = canvas(np.full((rows, columns, 3), (0.045, 0.04, 0.042)))
    draw = ImageDraw.Draw(lacquer)
    gold, red = (188, 148, 70), (138, 34, 26)
    draw.rectangle((40, 40, columns - 40, rows - 40), outline=gold, width=7)
    draw.ellipse((980, 130, 1290, 440), fill=(196, 168, 104))
    for k in range(5):
        y = 900 + 34 * k
        draw.line(
            [(x, y + 14 * np.sin(x / 70 + k)) for x in range(70, columns - 70, 10)],
            fill=gold,
            width=4,
        )
    draw.line(
        [(180, 1000), (260, 760), (240, 560), (360, 420), (540, 330)],
        fill=(120, 88, 40),
        width=26,
        joint="curve",
    )
    for x, y, r in (
        (540, 330, 120),
        (360, 420, 110),
        (260, 610, 120),
        (430, 520, 100),
        (190, 760, 90),
    ):
        for a in np.radians(np.arange(-180, 1, 9)):
            draw.line((x, y, x + r * np.cos(a), y + r * 0.62 * np.sin(a)), fill=gold, width=5)
    crane = [
        (760, 600),
        (900, 560),
        (1010, 480),
        (1130, 400),
        (1060, 540),
        (1180, 520),
        (1060, 620),
        (980, 680),
        (860, 690),
        (800, 660),
    ]
    draw.polygon(crane, fill=(222, 214, 192))
    draw.line(
        [(770, 620), (700, 570), (660, 590), (612, 620)],
        fill=(222, 214, 192),
        width=22,
        joint="curve",
    )
    draw.ellipse((646, 566, 686, 604), fill=red)
    draw.line([(960, 680), (1060, 790), (1160, 850)], fill=gold, width=9, joint="curve")
    face = array_of(lacquer)
    worn = np.clip((noise((rows, columns), (4, 4), 5) - 0.95) * 12, 0, 0.6)
    cover = slab(shapely.box(-10.25, -7.5, 10.25, 7.5).buffer(-0.25).buffer(0.25), 0.5, 0.1)
    pages = [
        box(19.6, 14.4, 0.24, 0.02).moved(0.1 + 0.05 * (-1) ** k, 0.03 * (k % 3), 0.5 + 0.25 * k)
        for k in range(11)
    ]
    spine = box(0.9, 15.0, 3.9, 0.1).moved(-9.9, 0, 0.05)
    silk = coated(plain((0.42, 0.10, 0.10), spread=0.3, seed=2, blob=14), gloss=0.25, sheen=0.5)
    tie = joined(
        [
            tube(
                curve(
                    [
                        [3.5, -7.65, 0.1],
                        [3.5, -7.75, 2.0],
                        [3.5, -7.55, 3.75],
                        [3.5, 0, 3.86],
                        [3.5, 7.55, 3.75],
                        [3.5, 7.75, 2],
                        [3.5, 7.65, 0.1],
                    ],
                    140,
                ),
                0.13,
            )
        ]
    )
    return [
        Part(cover, coated((0.05, 0.045, 0.045), gloss=0.9, coat=1.0)),
        Part(joined(pages), matt(aged_paper((400, 400), seed=4))),
        Part(spine, silk),
        Part(cover.moved(z=3.28), coated(mix(face, (0.30, 0.2, 0.14), worn), gloss=0.92, coat=1.0)),
        Part(tie, laid_rope((0.72, 0.66, 0.52))),
    ]
