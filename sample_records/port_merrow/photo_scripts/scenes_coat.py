"""Cover GC-009: the pilot's oilskin coat."""

from __future__ import annotations

import numpy as np
from catalogue import picture
from cloth import Cut, beads, cut, heights_of, mirrored, resting, sewn, symmetric
from materials import OLD_BRASS, metal
from studio import Part, View
from textures import clouds, mix, noise

PX_PER_CM = 11.0
OIL, DARK = (0.60, 0.43, 0.15), (0.34, 0.22, 0.08)


def oiled(piece: Cut, *, seed: int) -> np.ndarray:
    """Return oiled cotton: mustard gone brown in patches, cracked and rubbed at the edges."""
    tone = mix(OIL, DARK, clouds(piece.x.shape, 90, seed) ** 1.6 * 0.85)
    crack = np.clip((noise(piece.x.shape, (2, 9), seed + 2) - 0.86) * 6, 0, 1) * 0.5
    rubbed = np.exp(-piece.away_cm / 0.5) * 0.55
    stitch = (
        np.exp(-(((piece.away_cm - 0.9) / 0.14) ** 2))
        * 0.55
        * (np.sin(piece.x * 9 + piece.y * 9) > -0.6)
    )
    return mix(
        mix(mix(tone, (0.24, 0.16, 0.07), crack), (0.76, 0.62, 0.36), rubbed),
        (0.20, 0.13, 0.05),
        stitch,
    )


def _creases(piece: Cut, seed: int) -> np.ndarray:
    """Return a few long creases, mostly downward, and the slow swell of stiff cloth."""
    ridge = 1 - np.abs(2 * noise(piece.x.shape, (70, 26), seed) - 1)
    cross = 1 - np.abs(2 * noise(piece.x.shape, (34, 80), seed + 5) - 1)
    sharp = np.clip(ridge - 0.72, 0, 1) / 0.28 + 0.6 * np.clip(cross - 0.8, 0, 1) / 0.2
    return 0.42 * sharp + 0.55 * np.sin(piece.x * 0.30 + piece.y * 0.03)


def _panel(
    outline: list[tuple[float, float]],
    *,
    seed: int,
    puff: float,
    base: float,
    edge: float = 1.2,
    smooth: bool = True,
    crease: float = 1.0,
) -> tuple[Cut, np.ndarray, Part]:
    piece = cut(outline, PX_PER_CM, smooth=smooth)
    height = heights_of(
        piece, puff_cm=puff, edge_cm=edge, folds=crease * _creases(piece, seed), base_cm=base
    )
    return piece, height, sewn(piece, height, oiled(piece, seed=seed), gloss=0.58)


def coat(*, back: bool) -> list[Part]:
    """Return the coat laid flat, seen from the front or the back."""
    body = symmetric(
        [
            (3, 58),
            (8, 57),
            (21, 52),
            (25, 44),
            (26, 30),
            (27, 0),
            (31, -30),
            (36, -57),
            (34, -59.5),
            (16, -61),
            (3, -61),
        ]
    )
    parts = [_panel(body, seed=3, puff=2.6, base=0.0, edge=2.2)[2]]
    sleeve = [
        (19, 53),
        (25, 50.5),
        (31, 40),
        (40, 12),
        (44.5, -8),
        (42, -11),
        (34, -12.5),
        (31, -10),
        (27.5, 8),
        (22, 32),
        (19, 42),
    ]
    cuff = [(33.4, -8), (44.2, -5.6), (44.6, -10.5), (34.0, -13.2)]
    for left in (False, True):
        for shape, seed, lift in ((sleeve, 7, 0.9), (cuff, 9, 1.8)):
            parts.append(
                _panel(
                    mirrored(shape) if left else shape,
                    seed=seed + left,
                    puff=2.2 if seed == 7 else 1.2,
                    base=0.2 if back else lift,
                    smooth=seed == 7,
                )[2]
            )
    if back:
        yoke = symmetric(
            [(3, 57.4), (8, 56.4), (20.5, 51.4), (22, 43), (20, 35), (8, 31), (2, 30.4)]
        )
        parts.append(_panel(yoke, seed=12, puff=0.6, base=3.0, edge=0.4, crease=0.3)[2])
        vent = [(-0.2, -12), (1.4, -12), (1.6, -60.4), (-0.2, -60.4)]
        parts.append(
            _panel(vent, seed=13, puff=0.6, base=2.9, edge=0.4, smooth=False, crease=0.1)[2]
        )
    else:
        placket = [(-4, 54), (4.5, 53), (4.8, 0), (5.2, -60), (-3.4, -60.2), (-3.8, 0)]
        front, lifted, strip = _panel(
            placket, seed=15, puff=0.8, base=3.0, edge=0.4, smooth=False, crease=0.4
        )
        parts.append(strip)
        for left in (False, True):
            flap = [(10.5, -9), (24.5, -8), (25.2, -15), (18, -16.4), (10.8, -15.8)]
            parts.append(
                _panel(
                    mirrored(flap) if left else flap,
                    seed=17 + left,
                    puff=0.8,
                    base=3.1,
                    edge=0.4,
                    smooth=False,
                    crease=0.2,
                )[2]
            )
        rows = np.array([[0.4, y] for y in (45, 33, 21, 9, -3, -15)], dtype=float)
        parts.append(
            Part(
                beads(resting(front, lifted + 0.3, rows), 1.05, squash=0.45),
                metal(OLD_BRASS, rough=0.35),
            )
        )
    collar = symmetric(
        [(1, 61.5), (7, 62), (11.5, 58.5), (12.5, 52), (8, 47.5), (4.5, 51), (1, 54.4)]
    )
    if back:
        collar = symmetric([(1, 62), (7, 61.8), (11, 58), (11.6, 53.6), (6, 51.4), (1, 51)])
    parts.append(_panel(collar, seed=20, puff=1.2, base=2.6, edge=0.7, crease=0.3)[2])
    return parts


@picture(
    "1991.8.14_front.jpg", View(height_deg=85, portrait=True, light_deg=-70, ground=0.62, seed=50)
)
def coat_front() -> list[Part]:
    """Lay the coat face up, buttoned."""
    return coat(back=False)


@picture(
    "1991.8.14_back.jpg",
    View(height_deg=83, portrait=True, light_deg=-45, ground=0.64, seed=51, bar_left=True),
)
def coat_back() -> list[Part]:
    """Lay the coat face down."""
    return coat(back=True)
