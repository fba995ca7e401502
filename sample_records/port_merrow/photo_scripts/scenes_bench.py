"""Box B-031: chart- and compass-maker's bench, tools."""

from __future__ import annotations

import numpy as np
import shapely
from catalogue import picture
from charts import chart_lines
from materials import BRASS, COPPER, STEEL, coated, metal
from meshes import Mesh, lathe, rounded, tube
from prints import degree_scale
from ropes import laid_rope
from shapely.geometry import Polygon
from shapes import curve, disc
from slabs import box, slab
from studio import Part, View
from textures import clouds, mix, wood
from wear import worn_brass


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
        parts.append(Part(slab(leg, 0.5, 0.07).turned("z", tilt), metal(worn_brass(3), rough=0.3)))
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
        Part(head.moved(z=-0.1), metal(worn_brass(4), rough=0.26)),
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
        Part(pieces[0], metal(worn_brass(21), rough=0.24)),
        Part(pieces[1], metal(STEEL, rough=0.25)),
        Part(
            tube(np.concatenate([lead, *spiral]), 0.14, 16, lay=3.0), laid_rope((0.80, 0.77, 0.70))
        ),
    ]
