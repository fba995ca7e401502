"""Box B-031: chart- and compass-maker's bench, the metal things."""

from __future__ import annotations

import numpy as np
import shapely
from catalogue import picture
from materials import BRASS, COPPER, IRON, OLD_BRASS, STEEL, bumped, coated, matt, metal, pane
from meshes import Mesh, box, joined, lathe, rounded, slab, surface, tube
from prints import chart_lines, compass_rose, degree_scale
from ropes import laid_rope
from shapely.geometry import Polygon
from shapes import curve, disc
from studio import Part, View
from textures import clouds, mix, noise, wood


def _worn_brass(seed: int, size: int = 512) -> np.ndarray:
    return mix(OLD_BRASS, BRASS, clouds((size, size), size / 10, seed))


@picture(
    "PMM.77.1_front.jpg", View(height_deg=72, side_deg=-28, light_deg=-60, ground=0.57, seed=20)
)
def dividers() -> list[Part]:
    """Lay the dividers open."""
    parts = []
    for sign in (-1, 1):
        leg = Polygon(
            [(-0.12, 0), (0.42, -0.1), (0.42, -2.2), (0.3, -7.6), (0.18, -7.9), (-0.12, -7.9)]
        )
        leg = leg if sign > 0 else shapely.affinity.scale(leg, -1, 1, origin=(0, 0))
        point = tube(
            np.array([[0.06 * sign, -7.7, 0.25], [0.05 * sign, -9.5, 0.25], [0, -13.0, 0.25]]),
            np.array([0.17, 0.15, 0.01]),
            20,
        )
        tilt = 17.0 * sign
        parts.append(Part(slab(leg, 0.5, 0.07).turned("z", tilt), metal(_worn_brass(3), rough=0.3)))
        parts.append(Part(point.turned("z", tilt), metal(STEEL, rough=0.25)))
    head = lathe(
        rounded(
            [(0.85, 0), (0.9, 0.12), (0.9, 0.62), (0.8, 0.75), (0.3, 0.78), (0, 0.78)], reach=0.25
        )
    )
    screw = (
        slab(disc(0.32).difference(shapely.box(-0.05, -0.27, 0.05, 0.27)), 0.12, 0.02)
        .turned("z", 40)
        .moved(z=0.76)
    )
    return [
        *parts,
        Part(head.moved(z=-0.1), metal(_worn_brass(4), rough=0.26)),
        Part(screw, metal(STEEL, rough=0.3)),
    ]


@picture(
    "1964.22.3_front.jpg",
    View(height_deg=68, light_deg=-35, ground=0.50, warmth=0.4, seed=21, bar_left=True),
)
def protractor() -> list[Part]:
    """Lay the protractor flat; the scale is cut and blackened."""
    ring = disc(7.0).difference(disc(5.1))
    bar = shapely.box(-5.3, -0.45, 5.3, 0.45).union(disc(0.8)).difference(disc(0.4))
    plate = ring.union(bar).union(shapely.box(-0.2, -5.2, 0.2, -0.5))
    tone = mix((0.62, 0.49, 0.29), (0.83, 0.69, 0.42), clouds((1500, 1500), 130, 7))
    face = degree_scale(1500, metal_tone=tone)
    dull = 0.30 + 0.2 * clouds((512, 512), 40, 5)
    knob = lathe(rounded([(0.3, 0), (0.2, 0.4), (0.45, 0.6), (0.4, 0.9), (0, 0.95)]), 48)
    return [
        Part(slab(plate, 0.22, 0.04), metal(face, rough=dull, share=0.85 * np.ones((4, 4)))),
        *(Part(knob.moved(x, 0, 0.22), metal(BRASS, rough=0.25)) for x in (-3.4, 3.4)),
    ]


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
        Part(bowl, metal(_worn_brass(9), rough=0.28)),
        Part(card, matt(paper)),
        Part(cap, metal(BRASS, rough=0.2)),
        Part(lid, pane()),
        Part(joined([ring, pins]), metal(_worn_brass(12), rough=0.3)),
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
        Part(joined([*bands, cap, loop]), metal(_worn_brass(15), rough=0.25)),
        Part(joined([feet, keeper]), metal(IRON, rough=0.45, share=0.8)),
    ]


@picture(
    "1964.22.11_front.jpg", View(height_deg=56, side_deg=14, light_deg=-55, ground=0.60, seed=24)
)
def burin() -> list[Part]:
    """Lay the burin on the flat of its handle."""
    handle = lathe(
        rounded(
            [
                (0, 0),
                (1.3, 0.1),
                (1.75, 0.9),
                (1.3, 1.9),
                (0.75, 2.5),
                (0.62, 3.8),
                (0.5, 4.0),
                (0, 4.0),
            ],
            reach=0.42,
        )
    )
    flat = Mesh(
        np.where((handle.points[:, 1:2] < -0.85) & (np.arange(3) == 1), -0.85, handle.points),
        handle.normals,
        handle.uvs,
        handle.faces,
    )
    ferrule = lathe([(0.5, 3.5), (0.66, 3.55), (0.6, 4.5), (0.3, 4.5)])
    blade = box(0.42, 0.42, 7.2, 0.03).turned("z", 45).moved(z=4.3)
    tip = blade.points[:, 2] > 11.4
    points = blade.points.copy()
    points[tip, 2] -= 0.9 * (points[tip, 1] + 0.3) / 0.6
    blade = Mesh(points, blade.normals, blade.uvs, blade.faces)
    grain = np.swapaxes(wood((0.74, 0.56, 0.36), (0.55, 0.37, 0.2), seed=31, rings=6), 0, 1)
    place = [
        m.turned("x", -90).turned("z", -65).turned("x", 0).moved(-4.5, -1, 0.86)
        for m in (flat.turned("z", 180).scaled(1, 1, 1), ferrule, blade)
    ]
    return [
        Part(place[0], coated(grain, gloss=0.6, coat=0.3)),
        Part(place[1], metal(BRASS, rough=0.3)),
        Part(place[2], metal(STEEL, rough=0.22)),
    ]


@picture(
    "1999.103.2_front.jpg", View(height_deg=64, side_deg=-7, light_deg=-20, ground=0.55, seed=25)
)
def copper_plate() -> list[Part]:
    """Lay the plate face up; on a plate the chart stands mirrored."""
    lines = (
        np.asarray(chart_lines((1050, 1400), title="MERROW HAVEN", seed=3), dtype=float)[:, ::-1]
        / 255
    )
    tone = mix((0.62, 0.33, 0.22), COPPER, 0.35 + 0.65 * clouds((1050, 1400), 140, 4))
    face = mix((0.16, 0.085, 0.06), tone, np.clip(lines, 0, 1))
    rough = 0.26 + 0.16 * clouds((525, 700), 60, 9)
    plate = slab(shapely.box(-7, -5.25, 7, 5.25).buffer(-0.3).buffer(0.3), 0.22, 0.07)
    return [Part(plate, metal(face, rough=rough, share=0.8 * np.ones((4, 4))))]


@picture(
    "1964.22.7_front.jpg", View(height_deg=40, side_deg=-10, light_deg=-65, ground=0.64, seed=26)
)
def plumb_bob() -> list[Part]:
    """Lay the bob with its cord wound on a spool of itself."""
    body = lathe(
        rounded(
            [
                (0, 0),
                (0.18, 0.9),
                (0.6, 2.2),
                (1.75, 5.0),
                (2.0, 7.0),
                (1.4, 8.4),
                (0.7, 8.9),
                (0.55, 9.5),
                (0.85, 9.8),
                (0.8, 10.6),
                (0.3, 10.9),
                (0, 10.9),
            ],
            reach=0.35,
        )
    )
    tip = lathe([(0, -0.4), (0.1, 0.2), (0.34, 1.35), (0.3, 1.4)])
    pieces = [m.turned("y", 78).turned("z", 200).moved(4.2, -0.8, 1.95) for m in (body, tip)]
    spiral = []
    for k in range(5):
        t = np.linspace(0, 2 * np.pi, 120)
        r = 1.5 + 0.24 * k
        spiral.append(
            np.column_stack(
                [
                    -0.5 + r * np.cos(t),
                    4.3 + r * np.sin(t) * 0.95,
                    np.full(120, 0.2) + 0.1 * np.sin(3 * t + k),
                ]
            )
        )
    lead = curve(
        [
            [-5.9, -4.6, 0.2],
            [-7.8, -3.8, 0.2],
            [-6.6, 0.6, 0.2],
            [-4.2, 2.2, 0.2],
            [-1.9, 3.4, 0.25],
        ],
        160,
    )
    return [
        Part(pieces[0], metal(_worn_brass(21), rough=0.24)),
        Part(pieces[1], metal(STEEL, rough=0.25)),
        Part(
            tube(np.concatenate([lead, *spiral]), 0.14, 16, lay=3.0), laid_rope((0.80, 0.77, 0.70))
        ),
    ]
