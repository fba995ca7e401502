"""The pike: a long body of changing section, fins, eye and jaw; head to the left."""

from __future__ import annotations

import numpy as np
import shapely
from cloth import beads
from materials import bumped, coated
from meshes import Mesh, joined, surface
from shapely.geometry import Polygon
from slabs import slab
from studio import Part
from textures import clouds, mix, noise

# Along the body, in centimetres from the snout: upper edge, lower edge, half width.
STATIONS = np.array(
    [
        (0.0, 0.05, -0.25, 0.25),
        (1.2, 0.55, -0.75, 1.0),
        (3.5, 0.95, -1.2, 1.35),
        (6.0, 1.7, -1.9, 1.6),
        (9.5, 2.7, -2.7, 2.1),
        (15, 3.3, -3.4, 2.5),
        (21, 3.4, -3.5, 2.5),
        (27, 3.0, -2.9, 2.1),
        (32, 2.2, -1.9, 1.5),
        (36, 1.35, -1.2, 0.9),
        (39, 1.25, -1.25, 0.5),
    ]
)
LENGTH = 39.0


def _body() -> Mesh:
    s = np.linspace(0, LENGTH, 200)
    top, low, half = (np.interp(s, STATIONS[:, 0], STATIONS[:, k]) for k in (1, 2, 3))
    kernel = np.ones(13) / 13
    top, low, half = (
        np.convolve(np.pad(line, 6, mode="edge"), kernel, mode="valid") for line in (top, low, half)
    )
    angle = np.linspace(0, 2 * np.pi, 97)
    middle, tall = (top + low) / 2, (top - low) / 2
    x = np.broadcast_to((s - LENGTH / 2)[:, None], (200, 97))
    y = -half[:, None] * np.sign(np.cos(angle)) * np.abs(np.cos(angle)) ** 0.9
    z = middle[:, None] + tall[:, None] * np.sin(angle)
    u, v = (
        np.broadcast_to((s / LENGTH)[:, None], (200, 97)),
        np.broadcast_to((z - low[:, None]) / (top - low)[:, None], (200, 97)),
    )
    return surface(np.stack([x, y, z], axis=2), np.stack([u, v], axis=2), (False, True))


def _skin() -> np.ndarray:
    rows, columns = 500, 1600
    v, u = np.mgrid[0:rows, 0:columns] / np.array([rows, columns])[:, None, None]
    high = 1 - v
    tone = mix((0.83, 0.77, 0.58), (0.40, 0.41, 0.20), np.clip((high - 0.16) * 3.2, 0, 1))
    tone = mix(tone, (0.19, 0.20, 0.11), np.clip((high - 0.68) * 3.4, 0, 1))
    spots = np.clip((noise((rows, columns), (11, 17), 5) - 0.67) * 7, 0, 1)
    flank = (
        np.clip((high - 0.16) * 5, 0, 1)
        * np.clip((u - 0.22) * 14, 0, 1)
        * np.clip((0.9 - high) * 8, 0, 1)
    )
    tone = mix(tone, (0.80, 0.74, 0.46), spots * flank * 0.8)
    gill = (
        np.exp(-(((u - 0.245 - 0.03 * np.cos((high - 0.45) * 3.0)) / 0.006) ** 2))
        * (high > 0.08)
        * (high < 0.85)
    )
    jaw = np.exp(-(((high - 0.47 + 0.5 * (u - 0.02)) / 0.03) ** 2)) * (u < 0.125)
    cheek = (
        np.clip((noise((rows, columns), (5, 16), 8) - 0.6) * 3, 0, 1)
        * (u < 0.24)
        * (high > 0.3)
        * 0.35
    )
    return mix(
        tone * (0.85 + 0.15 * clouds((rows, columns), 60, 4)[..., None]),
        (0.10, 0.09, 0.06),
        np.clip(gill * 0.85 + jaw + cheek, 0, 1),
    )


def _fin(points: list[tuple[float, float]], y: float) -> Mesh:
    outline = Polygon(points).buffer(0.25).buffer(-0.1)
    return (
        slab(shapely.make_valid(outline), 0.16, 0.05).turned("x", 90).moved(-LENGTH / 2, y + 0.08)
    )


def pike_parts() -> list[Part]:
    """Return the fish around the origin."""
    scales = np.abs(np.sin(np.mgrid[0:512, 0:1024][0] * 0.30)) * np.abs(
        np.sin(np.mgrid[0:512, 0:1024][1] * 0.24)
    )
    skin = bumped(coated(_skin(), gloss=0.62, coat=0.5), scales, depth=0.12)
    fins = joined(
        [
            _fin([(29.2, 2.4), (30.8, 5.4), (33.8, 5.0), (35.6, 1.4), (32, 1.8)], 0.0),
            _fin([(29.8, -2.2), (31.2, -5.2), (34.2, -4.6), (35.6, -1.2), (32, -1.6)], 0.0),
            _fin(
                [
                    (38.4, 1.1),
                    (41.6, 4.4),
                    (43.2, 4.3),
                    (41.6, 0.2),
                    (43.2, -4.0),
                    (41.4, -4.1),
                    (38.4, -1.1),
                ],
                0.0,
            ),
            _fin([(10.6, -2.1), (12.2, -4.6), (14.6, -4.4), (13.2, -2.0)], -2.1),
            _fin([(20.6, -3.1), (22.0, -5.6), (24.4, -5.0), (23.2, -2.8)], -1.7),
        ]
    )
    rays = 0.5 + 0.5 * np.sin(np.mgrid[0:256, 0:256][1] * 0.6 + np.mgrid[0:256, 0:256][0] * 0.2)
    web = mix((0.66, 0.42, 0.20), (0.34, 0.26, 0.14), rays * 0.7 + 0.3 * clouds((256, 256), 20, 3))
    eye = np.array([[5.6 - LENGTH / 2, -1.42, 0.75]])
    teeth = np.array(
        [[0.7 + 0.42 * k - LENGTH / 2, -0.85 - 0.10 * k, -0.02 - 0.02 * k] for k in range(8)]
    )
    return [
        Part(_body(), skin),
        Part(fins, bumped(coated(web, gloss=0.4), rays, depth=0.3)),
        Part(beads(eye, 0.55), coated((0.80, 0.60, 0.16), gloss=0.9, coat=1.0)),
        Part(
            beads(eye + np.array([0, -0.36, 0]), 0.28),
            coated((0.01, 0.01, 0.01), gloss=0.95, coat=1.0),
        ),
        Part(beads(teeth, 0.09), coated((0.9, 0.87, 0.78), gloss=0.6)),
    ]
