"""Tube T-02: rolled flag and chart."""

from __future__ import annotations

import numpy as np
from catalogue import picture
from charts import chart
from materials import OLD_BRASS, bumped, coated, matt, metal
from meshes import Mesh, joined, lathe, rounded, surface, tube
from ropes import laid_rope
from shapes import curve
from studio import Part, View
from textures import clouds, mix, noise, plain, weave, wood


def rolled(length: float, radius: float, turns: float, gap: float) -> Mesh:
    """Return a sheet rolled along x, its free edge a little open; the face looks outward."""
    t = np.linspace(0, 2 * np.pi * turns, int(110 * turns))
    r = radius - gap * (t[-1] - t) / (2 * np.pi)
    r = r + gap * 1.4 * np.clip((t - t[-1] + 0.9) / 0.9, 0, 1) ** 2
    lengths = np.cumsum(np.concatenate([[0], np.diff(t) * r[1:]]))
    x = np.linspace(-length / 2, length / 2, 40)
    ring = np.stack([np.repeat(r * np.cos(t + 1.9), 1), r * np.sin(t + 1.9)], axis=1)
    points = np.stack(
        [
            np.broadcast_to(x[:, None], (40, len(t))),
            np.broadcast_to(ring[None, :, 0], (40, len(t))),
            np.broadcast_to(ring[None, :, 1] + radius, (40, len(t))),
        ],
        axis=2,
    )
    u, v = np.meshgrid(x / length + 0.5, lengths / lengths[-1], indexing="ij")
    return surface(points, np.stack([u, v], axis=2))


def bow(x: float, radius: float, width: float) -> Mesh:
    """Return a tape around a roll at x, tied on top in a bow."""
    t = np.linspace(0, 2 * np.pi, 90)
    hoop = joined(
        [
            tube(
                np.column_stack(
                    [
                        np.full(90, x + d),
                        (radius + 0.14) * np.cos(t),
                        radius + (radius + 0.14) * np.sin(t),
                    ]
                ),
                0.13,
                12,
            )
            for d in np.linspace(-width, width, 6)
        ]
    )
    top = 2 * radius + 0.3
    loops = [
        tube(
            curve(
                [
                    [x, -0.2, top],
                    [x + s * 2.2, -1.6, top + 0.9],
                    [x + s * 3.4, -1.0, top + 0.2],
                    [x + s * 1.8, -0.2, top + 0.1],
                    [x, 0, top],
                ],
                70,
            ),
            0.2,
            12,
        )
        for s in (-1, 1)
    ]
    tails = [
        tube(
            curve(
                [
                    [x, 0, top],
                    [x + s * 1.4, -2.0, top - 0.2],
                    [x + s * 2.0, -radius - 0.4, radius * 1.4],
                    [x + s * 2.6, -radius - 0.9, radius * 0.6],
                ],
                60,
            ),
            0.2,
            12,
        )
        for s in (-1, 1)
    ]
    return joined([hoop, *loops, *tails])


TAPE = matt((0.86, 0.83, 0.74))


@picture("1919.6_front.jpg", View(height_deg=36, side_deg=-14, light_deg=-60, ground=0.58, seed=74))
def signal_flag() -> list[Part]:
    """Lay the rolled flag with its toggle and a tail of line."""
    length, radius = 92.0, 4.6
    bands = np.zeros((900, 900, 3))
    v = np.mgrid[0:900, 0:900][1] / 900
    blue, white, red = (0.10, 0.17, 0.40), (0.88, 0.86, 0.79), (0.66, 0.10, 0.12)
    for low, tint in ((0.0, blue), (0.2, white), (0.4, red), (0.6, white), (0.8, blue)):
        bands[(v >= low) & (v < low + 0.2)] = tint
    cloth = (
        bands
        * (0.82 + 0.18 * weave(900, 220)[..., None])
        * (0.85 + 0.15 * clouds((900, 900), 90, 6)[..., None])
    )
    grazed = np.clip((noise((900, 900), (5, 5), 9) - 0.965) * 20, 0, 1)
    cloth = mix(cloth, (0.42, 0.38, 0.32), grazed)
    roll = rolled(length, radius, 3.4, 0.42)
    core = tube(np.array([[-length / 2 - 4, 0, radius], [length / 2 + 4, 0, radius]]), 2.1, 40)
    toggle = (
        lathe(rounded([(0, -3.5), (0.7, -3.3), (0.95, 0), (0.7, 3.3), (0, 3.5)], reach=0.4))
        .turned("y", 90)
        .moved(32, -11, 1.0)
    )
    line = tube(
        curve(
            [
                [44, -3.5, 4],
                [46, -8, 0.6],
                [40, -11.5, 0.5],
                [32, -11, 1.2],
                [24, -12.5, 0.5],
                [16, -10, 0.5],
                [8, -12.5, 0.5],
            ],
            240,
        ),
        0.42,
        lay=0.9,
    )
    return [
        Part(roll, bumped(matt(cloth), noise((512, 512), (1, 1), 4), depth=0.2)),
        Part(core, matt(aged_card())),
        Part(toggle, coated(wood((0.7, 0.52, 0.32), (0.5, 0.34, 0.2), seed=3), gloss=0.5)),
        Part(line, laid_rope((0.66, 0.55, 0.38))),
        *[Part(bow(x, radius + 0.2, 0.7), TAPE) for x in (-28, 4)],
    ]


def aged_card() -> np.ndarray:
    """Return the grey-white board of a roll's core."""
    return plain((0.82, 0.80, 0.74), spread=0.05, seed=2)


@picture(
    "1972.2.8_front.jpg",
    View(
        height_deg=42, side_deg=10, light_deg=-50, ground=0.55, warmth=0.4, seed=75, bar_left=True
    ),
)
def rolled_chart() -> list[Part]:
    """Lay the chart half unrolled, so that coast and rose show."""
    length, radius = 62.0, 3.2
    flat = 34.0
    sheet = chart((1100, 1300), title="مدخل الميناء", seed=14)
    t = np.linspace(0, 2 * np.pi * 2.6, 200)
    r = radius - 0.18 * t / (2 * np.pi)
    front_y = np.linspace(-flat, 0, 60)[:-1]
    lift = 0.10 + 1.5 * np.clip((-front_y - flat + 5) / 5, 0, 1) ** 2
    y = np.concatenate([front_y, r * np.sin(t)])
    z = np.concatenate([lift, radius + 0.1 - r * np.cos(t)])
    run = np.concatenate([[0], np.cumsum(np.hypot(np.diff(y), np.diff(z)))])
    x = np.linspace(-length / 2, length / 2, 50)
    yy, xx = np.meshgrid(y, x, indexing="ij")
    zz = np.broadcast_to(z[:, None], yy.shape) + 0.25 * np.sin(xx / 7) * np.clip(
        (-yy - flat + 8) / 8, 0, 1
    )
    u, v = np.meshgrid((x / length + 0.5), run / 46.0, indexing="xy")
    paper = surface(np.stack([xx, yy, zz], axis=2), np.stack([u, v], axis=2))
    weights = [
        lathe(
            rounded(
                [
                    (0, 0),
                    (2.0, 0),
                    (2.1, 0.2),
                    (2.1, 1.6),
                    (1.9, 1.8),
                    (0.5, 1.9),
                    (0.5, 2.6),
                    (0.9, 3.0),
                    (0.7, 3.6),
                    (0, 3.7),
                ],
                reach=0.2,
            )
        ).moved(s * 24, -flat + 9, 0.4)
        for s in (-1, 1)
    ]
    return [Part(paper, matt(sheet)), Part(joined(weights), metal(OLD_BRASS, rough=0.3))]
