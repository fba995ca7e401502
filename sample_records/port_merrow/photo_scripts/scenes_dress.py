"""Cover GC-004: the regatta-day dress."""

from __future__ import annotations

import numpy as np
from catalogue import picture
from cloth import Cut, beads, cut, heights_of, mirrored, resting, sewn, symmetric
from materials import coated
from studio import Part, View
from textures import clouds, mix, noise

NAVY, CREAM = (0.13, 0.17, 0.30), (0.90, 0.87, 0.79)


PX_PER_CM = 10.0


def stripes(across: np.ndarray, pitch: float, *, seed: int = 0) -> np.ndarray:
    """Return navy stripes on cream; `across` is the distance across the stripes."""
    phase = across / pitch % 1
    line = np.clip((0.20 - np.abs(phase - 0.5)) * 14, 0, 1)
    worn = mix(CREAM, (0.80, 0.75, 0.63), clouds(across.shape, 90, seed) ** 2)
    thread = 0.95 + 0.05 * noise(across.shape, (0.8, 0.8), seed + 1)
    return mix(worn, NAVY, line * 0.92) * thread[..., None]


def _skirt(*, back: bool) -> Part:
    piece = cut(
        symmetric(
            [
                (2, 0),
                (13.5, 0.3),
                (16, -8),
                (22, -32),
                (31, -64),
                (42, -96),
                (41, -99),
                (20, -101.5),
                (3, -102),
            ]
        ),
        PX_PER_CM,
    )
    half = np.interp(-piece.y, [0, 8, 32, 64, 96, 104], [13, 16, 22, 31, 42, 43])
    share = piece.x / half
    fall = np.clip(-piece.y / 100, 0, 1)
    bend = share + 0.02 * np.sin(piece.y / 9 + 3 * share)
    number = 13 if back else 9
    folds = (
        (0.35 + 1.5 * fall)
        * np.sin(np.pi * number * bend + 0.6)
        * (0.5 + 0.5 * np.cos(2.2 * share))
    )
    flounce = piece.y < -79 + 0.5 * np.sin(piece.x)
    folds = (
        folds + flounce * 0.55 * np.sin(np.pi * 46 * bend) + 0.5 * np.exp(-((piece.y + 79) ** 2))
    )
    face = stripes(share * 26, 1.45, seed=2)
    band = np.clip(1.1 - np.abs(piece.y + 79.2), 0, 1) * 0.95
    soil = np.clip((-piece.y - 97) / 6, 0, 1) * clouds(piece.x.shape, 60, 9) * 0.5
    face = mix(mix(face, NAVY, band), (0.52, 0.45, 0.36), soil)
    return sewn(piece, heights_of(piece, puff_cm=2.0, edge_cm=2.2, folds=folds), face)


def _sleeve(*, left: bool, back: bool) -> list[Part]:
    outline = [
        (14.5, 41),
        (20, 42),
        (25.5, 37),
        (30.5, 24),
        (35, 8),
        (36.5, -4),
        (33, -8.5),
        (28.5, -8.5),
        (27, -3),
        (22, 10),
        (17, 22),
        (14, 31),
    ]
    cuff = [(28.6, -7.6), (33.4, -7.6), (32.6, -13.5), (29.4, -13.5)]
    parts = []
    for shape, is_cuff in ((outline, False), (cuff, True)):
        piece = cut(mirrored(shape) if left else shape, PX_PER_CM, smooth=not is_cuff)
        side = -1 if left else 1
        axis = side * piece.x - np.interp(-piece.y, [-42, -24, 4, 14], [18, 24.5, 31.5, 31])
        folds = (
            0.0 * piece.x
            if is_cuff
            else 0.35 * np.sin(axis * 1.2 + piece.y * 0.10) * np.clip(1 - piece.y / 40, 0.25, 1)
        )
        face = stripes(axis if not is_cuff else piece.y, 1.25, seed=6)
        if is_cuff:
            face = (
                np.full((*piece.x.shape, 3), NAVY)
                * (0.9 + 0.1 * noise(piece.x.shape, (1, 1), 3))[..., None]
            )
        height = heights_of(
            piece,
            puff_cm=1.0 if is_cuff else 2.0,
            edge_cm=0.8 if is_cuff else 1.8,
            folds=folds,
            base_cm=0.2 if back else 0.7,
        )
        parts.append(sewn(piece, height, face))
    return parts


def lace(piece: Cut) -> np.ndarray:
    """Return cream lace over a dark lining: rows of round holes and scallops."""
    cell_x, cell_y = (
        piece.x / 0.9 % 1 - 0.5,
        (piece.y / 0.9 + (np.floor(piece.x / 0.9) % 2) * 0.5) % 1 - 0.5,
    )
    hole = np.clip((0.24 - np.hypot(cell_x, cell_y)) * 12, 0, 1)
    return mix((0.93, 0.90, 0.82), (0.60, 0.56, 0.50), hole)


def dress(*, back: bool) -> list[Part]:
    """Return the dress laid flat, seen from the front or the back."""
    bodice = cut(
        symmetric(
            [
                (4, 46),
                (6.5, 45.2),
                (17, 41.5),
                (18.5, 36),
                (17.5, 30),
                (19.5, 22),
                (19, 10),
                (14, 1.5),
                (6, -2),
                (2, -2.5),
            ]
        ),
        PX_PER_CM,
    )
    pouch = 0.9 * np.exp(-(((bodice.y - 6) / 7) ** 2)) * (0 if back else 1)
    pleat = 0.28 * np.sin(bodice.x * 1.5) * np.clip(1.2 - bodice.y / 46, 0, 1)
    height = heights_of(bodice, puff_cm=2.4, edge_cm=2.4, folds=pouch + pleat, base_cm=0.3)
    parts = [
        _skirt(back=back),
        sewn(bodice, height, stripes(bodice.x * (1 + 0.006 * (bodice.y - 10)), 1.45, seed=4)),
    ]
    parts += _sleeve(left=False, back=back) + _sleeve(left=True, back=back)
    depth = 33 if back else 27
    yoke = cut(
        symmetric(
            [
                (3.6, 46.3),
                (9, 43.6),
                (11.5, 39),
                (8, 33 if back else 31),
                (3, depth),
                (0.5, depth - 0.6),
            ]
        ),
        PX_PER_CM,
    )
    parts.append(
        sewn(
            yoke,
            heights_of(yoke, puff_cm=0.5, edge_cm=0.6, folds=0 * yoke.x, base_cm=2.7),
            lace(yoke),
        )
    )
    collar = cut(symmetric([(2, 52.2), (5.2, 51.8), (5.0, 46.2), (2, 45.4)]), PX_PER_CM)
    parts.append(
        sewn(
            collar,
            heights_of(collar, puff_cm=1.2, edge_cm=0.8, folds=0 * collar.x, base_cm=2.0),
            lace(collar),
        )
    )
    belt = cut(symmetric([(4, 1.6), (14.2, 2.0), (14.2, -1.6), (4, -2.6)]), PX_PER_CM, smooth=False)
    navy = np.full((*belt.x.shape, 3), NAVY) * (0.85 + 0.3 * clouds(belt.x.shape, 20, 4))[..., None]
    parts.append(
        sewn(
            belt,
            heights_of(belt, puff_cm=0.5, edge_cm=0.5, folds=0.1 * np.sin(belt.y * 5), base_cm=2.6),
            navy,
            gloss=0.4,
        )
    )
    rows = np.array([[0.0, y] for y in np.arange(5, 45 if back else 26, 3.2)])
    buttons = beads(resting(bodice, height + (0.6 if back else 0.2), rows), 0.55, squash=0.5)
    parts.append(Part(buttons, coated((0.86, 0.84, 0.80), gloss=0.8)))
    return parts


@picture(
    "1978.55.1_front.jpg", View(height_deg=84, portrait=True, light_deg=-65, ground=0.52, seed=40)
)
def dress_front() -> list[Part]:
    """Lay the dress face up."""
    return dress(back=False)


@picture(
    "1978.55.1_back.jpg",
    View(height_deg=86, portrait=True, light_deg=-55, ground=0.54, seed=41, bar_left=True),
)
def dress_back() -> list[Part]:
    """Lay the dress face down: buttons to the neck, no pouch."""
    return dress(back=True)
