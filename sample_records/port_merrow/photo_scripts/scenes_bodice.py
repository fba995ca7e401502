"""Box B-036: beaded bodice and straw hat."""

from __future__ import annotations

import numpy as np
from catalogue import picture
from cloth import beads, cut, heights_of, mirrored, resting, sewn, symmetric
from materials import STEEL, bumped, coated, metal
from meshes import joined, lathe, rounded, tube
from shapes import ball, curve
from studio import Part, View
from textures import clouds, mix, plain


@picture(
    "1978.55.1c_hat.jpg",
    View(height_deg=27, side_deg=-25, light_deg=-58, ground=0.58, warmth=0.3, seed=42),
)
def hat() -> list[Part]:
    """Set the straw hat on the table, two pins through the crown."""
    profile = rounded(
        [
            (15.4, 1.0),
            (15.6, 1.3),
            (15.2, 1.55),
            (9.6, 0.9),
            (8.9, 1.2),
            (8.5, 9.6),
            (8.0, 10.3),
            (7.4, 10.5),
            (0, 10.55),
        ],
        reach=0.3,
    )
    under = [
        (r, z - 0.45)
        for r, z in reversed(rounded([(15.4, 1.0), (9.6, 0.7), (8.4, 0.6), (8.2, 3)], reach=0.2))
    ]
    v, u = np.mgrid[0:1024, 0:1024] / 1024
    plait = np.abs(np.sin(np.pi * (v * 46)))
    braid = np.abs(np.sin(np.pi * (u * 210 + 1.5 * np.sin(np.pi * v * 46 * 2))))
    straw = (
        mix((0.55, 0.40, 0.20), (0.90, 0.75, 0.47), 0.35 + 0.65 * plait**0.5 * (0.6 + 0.4 * braid))
        * (0.85 + 0.15 * clouds((1024, 1024), 90, 6))[..., None]
    )
    material = bumped(coated(straw, gloss=0.42), plait * 0.7 + 0.3 * braid, depth=0.35)
    body = joined([lathe(profile), lathe(under)])
    ribbon = lathe([(9.0, 1.2), (9.06, 1.3), (8.86, 5.2), (8.8, 5.25)])
    bow = joined(
        [lathe(ball(1.0), 40).scaled(0.45, 1.9, 1.5).moved(9.1, 1.9 * s, 3.2) for s in (1, -1)]
        + [lathe(ball(0.7), 32).scaled(0.8, 0.7, 1.5).moved(9.3, 0, 3.2)]
    )
    cloth = coated(plain((0.10, 0.13, 0.26), spread=0.25, seed=4, blob=12), gloss=0.35, sheen=0.6)
    pins = []
    for turn, tint in ((-38.0, (0.86, 0.84, 0.78)), (-62.0, (0.05, 0.05, 0.06))):
        shaft = tube(
            np.array([[-12.5, 0, 7.2], [12.0, 0, 8.0], [13.6, 0, 8.06]]),
            np.array([0.09, 0.09, 0.01]),
            16,
        )
        head = lathe(ball(0.65), 40).moved(-12.9, 0, 7.18)
        pins += [
            Part(shaft.turned("z", turn), metal(STEEL, rough=0.2)),
            Part(head.turned("z", turn), coated(tint, gloss=0.9, coat=1.0)),
        ]
    place = [m.turned("z", -118) for m in (ribbon, bow)]
    return [Part(body, material), Part(joined(place), cloth), *pins]


def _scroll(cx: float, cy: float, size: float, turn: float, side: int) -> np.ndarray:
    t = np.linspace(0.0, 1.0, int(size * 30))
    angle = side * (turn + t * 9.0)
    r = size * (1 - 0.86 * t)
    return np.column_stack([cx + r * np.cos(angle), cy + r * np.sin(angle)])


def _bodice(*, back: bool) -> list[Part]:
    dip = 33.5 if back else 28.5
    body = cut(
        symmetric(
            [
                (1, dip),
                (7, dip + 1.5),
                (11.5, 39.5),
                (15.5, 41),
                (16.5, 36),
                (18.5, 29),
                (18, 20),
                (14.8, 8),
                (12.6, 4),
                (6, 1.8),
                (1, 0 if not back else 1.5),
            ]
        ),
        22,
    )
    pleat = 0.14 * np.sin(body.x * 2.4 + 0.02 * body.x * body.y)
    height = heights_of(body, puff_cm=1.7, edge_cm=1.6, folds=pleat, base_cm=0.2)
    silk = mix((0.83, 0.77, 0.66), (0.72, 0.62, 0.48), clouds(body.x.shape, 110, 3) ** 1.5)
    net = 0.90 + 0.10 * (np.abs(np.sin(body.x * 14) * np.sin(body.y * 14)))[..., None]
    seam = (
        np.exp(-((np.abs(body.x) - np.interp(body.y, [0, 20, 40], [6.5, 9.5, 11])) ** 2) * 40)
        * 0.35
    )
    parts = [sewn(body, height, mix(silk * net, (0.5, 0.42, 0.32), seam), sheen=0.5, gloss=0.25)]
    for left in (False, True):
        shape = [(14, 41.2), (18, 42), (22.5, 38.5), (24.5, 32), (23, 28), (17.5, 27.5), (16, 33)]
        piece = cut(mirrored(shape) if left else shape, 22)
        ruffle = 0.3 * np.sin(np.arctan2(piece.y - 42, piece.x * (-1 if left else 1) - 13) * 26)
        parts.append(
            sewn(
                piece,
                heights_of(piece, puff_cm=1.8, edge_cm=1.3, folds=ruffle, base_cm=0.5),
                mix((0.80, 0.74, 0.63), (0.66, 0.57, 0.44), clouds(piece.x.shape, 50, 8)),
                sheen=0.5,
                gloss=0.25,
            )
        )
    lines = []
    for side in (1, -1):
        for cx, cy, size, turn in (
            (6.5, 24, 4.2, 0.4),
            (11.5, 31, 3.4, 2.4),
            (5, 14.5, 3.6, 1.4),
            (11.8, 17, 3.2, 4.0),
            (4, 7, 2.6, 0.2),
            (9.6, 8.6, 2.4, 2.0),
            (15.4, 24.5, 2.2, 1.0),
            (2.4, 19.5, 1.7, 3.0),
            (8.2, 12.4, 1.6, 5.0),
            (14.2, 35.6, 2.0, 0.5),
        ):
            lines.append(_scroll(cx * side, cy, size, turn, side))
        edge = curve([[0, dip - 1.2], [7 * side, dip + 0.1], [11.4 * side, 38.5]], 110)
        lines += [edge, edge - [0, 0.9], curve([[0, 1.6], [6 * side, 3.0], [12.4 * side, 5]], 90)]
    lines.append(np.column_stack([np.zeros(100), np.linspace(2, dip - 2, 100)]))
    rng = np.random.default_rng(5)
    spread = np.column_stack([rng.uniform(-18, 18, 1500), rng.uniform(0, 40, 1500)])
    jet = beads(resting(body, height + 0.1, np.concatenate(lines)), 0.19)
    small = beads(resting(body, height + 0.05, spread), 0.13)
    shed = np.array([[-19.6, 22.0, 0.2], [-20.4, 19.5, 0.2], [-19.9, 18.2, 0.2]])
    parts += [
        Part(joined([jet, beads(shed, 0.19)]), coated((0.025, 0.025, 0.03), gloss=0.9, coat=1.0)),
        Part(small, metal((0.75, 0.62, 0.38), rough=0.25)),
    ]
    if back:
        hooks = np.array([[0.0, y] for y in np.arange(4, 31, 1.6)])
        parts.append(
            Part(
                beads(resting(body, height + 0.1, hooks + np.array([0.5, 0])), 0.26, squash=0.6),
                metal(STEEL, rough=0.3),
            )
        )
    return parts


@picture("1978.55.2_front.jpg", View(height_deg=76, light_deg=-60, ground=0.50, seed=43))
def bodice_front() -> list[Part]:
    """Lay the bodice face up, three shed beads beside it."""
    return _bodice(back=False)


@picture(
    "1978.55.2_back.jpg", View(height_deg=78, light_deg=-40, ground=0.52, seed=44, bar_left=True)
)
def bodice_back() -> list[Part]:
    """Lay the bodice face down: hooks along the opening."""
    return _bodice(back=True)
