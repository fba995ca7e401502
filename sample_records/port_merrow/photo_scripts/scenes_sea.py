"""Box B-058: harbour and sea service."""

from __future__ import annotations

import numpy as np
from catalogue import picture
from materials import BRASS, IRON, OLD_BRASS, bumped, matt, metal
from meshes import Mesh, joined, lathe, relief, rounded, tube
from PIL import Image, ImageDraw
from prints import distance_from_edge
from shapes import curve
from studio import Part, View
from textures import blurred, clouds, font, mix, noise


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
