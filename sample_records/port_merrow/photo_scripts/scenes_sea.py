"""Box B-058 and tube T-02: harbour and sea service, rolled flag and chart."""

from __future__ import annotations

import numpy as np
import shapely
from catalogue import picture
from materials import BRASS, IRON, OLD_BRASS, bumped, coated, matt, metal
from meshes import Mesh, box, joined, lathe, relief, rounded, slab, surface, tube
from pike import pike_parts
from PIL import Image, ImageDraw
from prints import chart, distance_from_edge, label
from ropes import laid_rope
from shapes import curve
from studio import Part, View
from textures import blurred, clouds, font, mix, noise, plain, weave, wood


@picture(
    "1931.14.5_front.jpg", View(height_deg=24, side_deg=-10, light_deg=-64, ground=0.62, seed=70)
)
def line_weights() -> list[Part]:
    """Stand five weights in a row, the rod lying before them."""
    parts = []
    for k, (x, r, h) in enumerate(
        ((-10.8, 3.5, 9.0), (-3.6, 3.1, 7.6), (2.8, 2.7, 6.2), (8.3, 2.5, 5.8), (13.0, 2.1, 4.3))
    ):
        bell = rounded(
            [
                (0, 0),
                (r * 0.96, 0),
                (r, 0.2),
                (r * 0.92, h * 0.45),
                (r * 0.55, h * 0.85),
                (r * 0.36, h * 0.93),
                (r * 0.3, h),
                (0.35, h),
                (0.35, h - 0.8),
            ],
            reach=0.25,
        )
        bloom = clouds((512, 512), 50, 30 + k) ** (1.3 if k in (1, 3) else 3.5)
        tone = mix(
            mix((0.24, 0.245, 0.26), (0.40, 0.41, 0.43), clouds((512, 512), 30, 50 + k)),
            (0.80, 0.80, 0.78),
            bloom * 0.9,
        )
        dents = 1 - np.clip((noise((512, 512), (12, 12), 7 + k) - 0.8) * 4, 0, 1)
        body = bumped(
            metal(tone, rough=0.55, share=np.clip(0.75 - 0.7 * bloom, 0, 1)), dents, depth=0.5
        )
        ring_t = np.linspace(0, 2 * np.pi, 60)
        eye = tube(
            np.column_stack([0.62 * np.cos(ring_t), 0 * ring_t, h + 0.35 + 0.62 * np.sin(ring_t)]),
            0.16,
        )
        parts += [
            Part(lathe(bell).turned("z", 40 * k).moved(x), body),
            Part(eye.turned("z", 25 * k).moved(x), metal(IRON, rough=0.5)),
        ]
    rod = tube(np.array([[-13.5, -5.4, 0.35], [12.6, -6.0, 0.35]]), 0.33)
    hook = tube(
        curve([[12.6, -6.0, 0.35], [14.2, -5.8, 0.35], [14.8, -4.8, 0.35], [14.0, -4.1, 0.35]], 50),
        0.3,
    )
    rust = mix((0.20, 0.16, 0.14), (0.42, 0.24, 0.13), clouds((256, 256), 20, 3))
    return [*parts, Part(joined([rod, hook]), metal(rust, rough=0.65, share=0.4))]


@picture(
    "1946.9.1_front.jpg",
    View(height_deg=17, portrait=True, light_deg=-58, ground=0.60, seed=71, bar_left=True),
)
def shell_case() -> list[Part]:
    """Stand the case on its base."""
    profile = rounded(
        [
            (0, 0),
            (4.8, 0),
            (4.9, 0.12),
            (4.9, 0.55),
            (4.75, 0.7),
            (4.55, 0.8),
            (4.6, 1.1),
            (4.45, 18),
            (4.25, 28.8),
            (4.32, 29.5),
            (4.2, 29.55),
            (4.05, 29.3),
            (4.1, 12),
        ],
        reach=0.12,
    )
    body = lathe(profile, 220)
    dent = np.exp(-(((body.points[:, 2:3] - 28.6) / 1.3) ** 2)) * np.exp(
        -((body.points[:, :1] - 3.2) ** 2 + (body.points[:, 1:2] + 2.8) ** 2) / 2.2
    )
    squeezed = body.points * np.concatenate(
        [1 - 0.13 * dent, 1 - 0.13 * dent, np.ones_like(dent)], axis=1
    )
    body = Mesh(squeezed, body.normals, body.uvs, body.faces)
    tone = mix(
        mix(OLD_BRASS, BRASS, clouds((512, 512), 60, 8)),
        (0.34, 0.26, 0.16),
        np.clip(clouds((512, 512), 25, 18) * 1.6 - 0.95, 0, 1),
    )
    return [Part(body, metal(tone, rough=0.2 + 0.22 * clouds((512, 512), 40, 4)))]


@picture("1902.7_front.jpg", View(height_deg=62, side_deg=0, light_deg=-75, ground=0.50, seed=72))
def biscuit() -> list[Part]:
    """Lay the biscuit face up."""
    size = 900
    y, x = (np.mgrid[0:size, 0:size] - size / 2) / (size / 2) * 5.6
    away, angle = np.hypot(x, y), np.arctan2(y, x)
    edge = 5.25 + 0.10 * np.sin(3 * angle + 1) + 0.05 * np.sin(11 * angle)
    inside = (away < edge).astype(float)
    depth = distance_from_edge(inside) / size * 11.2
    height = (
        1.25 * np.clip(1 - np.exp(-depth / 0.28), 0, 1)
        - 0.12 * np.exp(-((away / 3.4) ** 2))
        + 0.10 * (clouds((size, size), 60, 3) - 0.5)
    )
    holes = np.zeros((size, size))
    for row in range(-4, 5):
        for column in range(-4, 5):
            cx, cy = column * 1.02 + 0.5 * (row % 2), row * 0.95
            if np.hypot(cx, cy) < 4.6:
                holes = np.maximum(holes, np.clip((0.17 - np.hypot(x - cx, y - cy)) * 14, 0, 1))
    height = (
        blurred(height - 0.7 * holes, 2.5) + 0.035 * noise((size, size), (1.5, 1.5), 8) * inside
    )
    crust = mix(
        (0.83, 0.70, 0.49),
        (0.56, 0.38, 0.20),
        np.clip(clouds((size, size), 70, 5) ** 1.4 * 0.8 + 0.5 * np.clip(away - 4.3, 0, 1), 0, 1),
    )
    crust = mix(crust, (0.25, 0.16, 0.09), blurred(holes, 2) * 0.85)
    pen = Image.new("L", (size, size), 0)
    draw = ImageDraw.Draw(pen)
    for text, at in (("this Biscuit", (450, 322)), ("April 1784", (450, 562))):
        draw.text(at, text, font=font(92, "DejaVuSerif-Italic"), fill=210, anchor="mm")
    crust = mix(
        crust,
        (0.19, 0.12, 0.08),
        blurred(np.asarray(pen, dtype=float) / 255, 1.2)
        * (0.55 + 0.45 * clouds((size, size), 20, 3)),
    )
    rng = np.random.default_rng(3)
    crumbs = joined(
        [
            lathe([(0, 0), (0.12, 0.05), (0.1, 0.14), (0, 0.16)], 7)
            .scaled(*rng.uniform(0.5, 1.5, 3))
            .moved(rng.uniform(3.4, 6.2), rng.uniform(-5.4, -4.2), 0)
            for _ in range(14)
        ]
    )
    return [
        Part(relief(height, inside, (11.2, 11.2)), matt(crust)),
        Part(crumbs, matt((0.76, 0.62, 0.42))),
    ]


@picture(
    "1926.18_front.jpg",
    View(height_deg=9, side_deg=-9, light_deg=-40, ground=0.60, depth=7, seed=73),
    samples=16,
)
def pike_case() -> list[Part]:
    """Stand the case with its fish, reeds and label.

    The pane is left out: glass would keep the soft boxes from lighting the inside.
    """
    wide, high, deep = 52.0, 24.0, 13.0
    black = coated(plain((0.07, 0.06, 0.055), spread=0.3, seed=4), gloss=0.6, coat=0.3)
    gilt = metal(mix((0.58, 0.43, 0.2), (0.78, 0.62, 0.32), clouds((256, 256), 30, 9)), rough=0.35)
    outer = shapely.box(-wide / 2, 0, wide / 2, high)
    frame = slab(outer.difference(outer.buffer(-1.6, join_style="mitre")), 1.0, 0.12)
    fillet = slab(
        outer.buffer(-1.6, join_style="mitre").difference(outer.buffer(-2.1, join_style="mitre")),
        0.6,
        0.12,
    )
    stand = [m.turned("x", 90).moved(y=-deep / 2) for m in (frame, fillet)]
    walls = [
        box(wide, deep, 1.0, 0.05),
        box(wide, deep, 1.0, 0.05).moved(z=high - 1),
        *[box(1.0, deep, high, 0.05).moved(x=s * (wide / 2 - 0.5)) for s in (-1, 1)],
    ]
    v, _u = np.mgrid[0:400, 0:800] / np.array([400, 800])[:, None, None]
    sky = mix((0.64, 0.74, 0.74), (0.84, 0.84, 0.72), np.clip(v * 1.3, 0, 1))
    sky = mix(
        sky, (0.47, 0.56, 0.40), np.clip(v * 2 - 1.1 + 0.3 * clouds((400, 800), 50, 4), 0, 1) * 0.8
    )
    back = (
        slab(shapely.box(-wide / 2 + 1, 0, wide / 2 - 1, high), 0.3)
        .turned("x", 90)
        .moved(y=deep / 2 - 0.1)
    )
    shingle = 1.2 + 0.9 * clouds((90, 300), 12, 6) + 0.25 * noise((90, 300), (1.5, 1.5), 7)
    bed = relief(shingle, np.ones((90, 300)), (wide - 2, deep - 1.6))
    gravel = mix((0.58, 0.49, 0.36), (0.34, 0.28, 0.2), noise((256, 512), (2, 2), 3))
    rng = np.random.default_rng(8)
    reeds = []
    for _ in range(46):
        x, y = rng.uniform(-23, 23), rng.uniform(1.8, 5.2)
        tall, lean = rng.uniform(8, 18.5), rng.uniform(-3, 3)
        reeds.append(
            tube(
                curve([[x, y, 1], [x + lean * 0.3, y, tall * 0.5], [x + lean, y - 0.4, tall]], 24),
                np.linspace(0.26, 0.05, 24),
                8,
            )
        )
    plate = label(
        (900, 200),
        [("PIKE · 14 lb 6 oz", 62), ("taken in Merrow Pool, 1911", 44)],
        seed=5,
        colour=(0.92, 0.86, 0.68),
    )
    card = (
        slab(shapely.box(-6.3, 0, 6.3, 2.6), 0.05, 0.02)
        .turned("x", 80)
        .moved(13.0, -deep / 2 + 1.6, 2.1)
    )
    return [
        Part(joined([stand[0], *walls]), black),
        Part(stand[1], gilt),
        Part(back, matt(sky)),
        Part(bed, matt(gravel)),
        Part(
            joined(reeds),
            matt(mix((0.43, 0.48, 0.22), (0.62, 0.55, 0.30), noise((64, 64), (8, 8), 2))),
        ),
        Part(card, matt(plate)),
        *[Part(part.mesh.moved(-1.0, 0.3, 11.6), part.material) for part in pike_parts()],
    ]


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
