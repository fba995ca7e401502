"""The invented people in the old photographs: modelled, lit and taken like the objects."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from materials import coated, matt
from meshes import joined, lathe, rounded, surface, tube
from shapely.geometry import Polygon
from shapes import ball, curve, disc
from slabs import slab
from studio import Part
from textures import blurred, clouds, mix, noise

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Array = NDArray[np.float64]
SKIN, HAIR, COAT, SHIRT = (
    (0.66, 0.60, 0.54),
    (0.16, 0.14, 0.13),
    (0.10, 0.10, 0.11),
    (0.80, 0.79, 0.76),
)


def _bump(way: Array, x: float, y: float, z: float, size: tuple[float, float]) -> Array:
    """Return a soft spot on the head around a direction; size is across and up."""
    centre = np.array([x, y, z]) / np.linalg.norm([x, y, z])
    front = np.clip(way @ centre, 0, 1) > 0.3
    across, up = (way[..., 0] - centre[0]) / size[0], (way[..., 2] - centre[2]) / size[1]
    return np.exp(-(across**2) - up**2) * front


def head(*, seed: int, beard: bool) -> list[Part]:
    """Return a head around the origin, one unit high, face toward -y."""
    polar, turn = np.meshgrid(
        np.linspace(0, np.pi, 180), np.linspace(0, 2 * np.pi, 241), indexing="ij"
    )
    way = np.stack(
        [np.sin(polar) * np.cos(turn), np.sin(polar) * np.sin(turn), -np.cos(polar)], axis=2
    )
    rng = np.random.default_rng(seed)
    z, both = way[..., 2], (-1, 1)
    out = np.ones_like(z)
    out = (
        out
        + 0.20 * _bump(way, 0, -1, -0.16, (0.10, 0.13))
        + 0.09 * _bump(way, 0, -1, 0.04, (0.07, 0.2))
    )
    out = (
        out
        + 0.05 * _bump(way, 0, -1, -0.47, (0.25, 0.16))
        + 0.09 * _bump(way, 0, -0.8, -0.78, (0.2, 0.16))
    )
    out = out - 0.03 * _bump(way, 0, -1, -0.45, (0.20, 0.025))
    for s in both:
        out = (
            out
            - 0.10 * _bump(way, 0.34 * s, -0.95, 0.10, (0.17, 0.10))
            + 0.05 * _bump(way, 0.32 * s, -0.95, 0.25, (0.2, 0.06))
        )
        out = (
            out
            + 0.045 * _bump(way, 0.32 * s, -0.95, 0.09, (0.08, 0.05))
            + 0.04 * _bump(way, 0.5 * s, -0.8, -0.2, (0.2, 0.18))
        )
    tone = np.full((*z.shape, 3), SKIN) * (0.92 + 0.08 * clouds(z.shape, 20, seed))[..., None]
    for s in both:
        tone = mix(
            tone, HAIR, np.clip(1.0 * _bump(way, 0.33 * s, -0.95, 0.25, (0.17, 0.03)), 0, 0.7)
        )
        tone = mix(
            tone,
            (0.12, 0.11, 0.1),
            np.clip(1.2 * _bump(way, 0.32 * s, -0.95, 0.09, (0.06, 0.032)), 0, 0.8),
        )
    tone = mix(tone, (0.42, 0.34, 0.31), _bump(way, 0, -1, -0.45, (0.16, 0.05)))
    strands = 0.03 * (noise(z.shape, (6, 1.2), seed + 3) - 0.5)
    crown = np.clip(
        (z - 0.42 + 0.55 * np.clip(way[..., 1] + 0.55, 0, 1.3) + strands * 4) * 9, 0, 1
    ) * (z > -0.45)
    if beard:
        under = np.clip(
            (-0.36 - z + 0.35 * np.abs(way[..., 0]) ** 2 + strands * 4) * 9, 0, 1
        ) * np.clip((0.25 - way[..., 1]) * 5, 0, 1)
        lip = np.clip(1.6 * _bump(way, 0, -1, -0.36, (0.24, 0.06)), 0, 1)
        mouth = _bump(way, 0, -1, -0.47, (0.13, 0.035))
        under = np.clip(np.maximum(under, lip) - mouth * 0.6, 0, 1)
        out, crown = out + 0.13 * under * (1 + strands * 6), np.maximum(crown, under)
    grey = (0.36, 0.35, 0.34) if seed % 3 == 0 else HAIR
    tone = mix(tone, grey, crown)
    narrow = 1 - 0.20 * np.clip(-z, 0, 1) ** 1.5
    size = np.array([0.36, 0.43, 0.52]) * (1 + rng.uniform(-0.04, 0.04, 3))
    points = (
        way * out[..., None] * size * np.stack([narrow, np.ones_like(z), np.ones_like(z)], axis=2)
    )
    skull = surface(points + 0.012 * strands[..., None] * way, around=(False, True))
    ears = joined(
        [lathe(ball(0.1), 24).scaled(0.5, 0.8, 1.4).moved(s * 0.365, 0.04, 0.0) for s in both]
    )
    return [Part(skull, matt(tone[::-1])), Part(ears, matt(SKIN))]


def cap() -> list[Part]:
    """Return a peaked seaman's cap that fits the head."""
    crown = (
        lathe(
            rounded(
                [(0.40, 0.22), (0.42, 0.40), (0.55, 0.52), (0.53, 0.60), (0.3, 0.66), (0, 0.67)],
                reach=0.35,
            )
        )
        .scaled(0.97, 1.12, 0.9)
        .moved(z=0.12)
    )
    brim = slab(
        Polygon(disc(0.47).exterior.coords).intersection(
            Polygon([(-1, -1), (1, -1), (1, -0.12), (-1, -0.12)])
        ),
        0.03,
        0.01,
    )
    return [
        Part(crown, matt(COAT)),
        Part(
            brim.scaled(0.9, 1.35, 1).turned("x", 16).moved(0, -0.08, 0.32),
            coated((0.04, 0.04, 0.04), gloss=0.7),
        ),
    ]


def torso(*, seed: int, folded: bool) -> list[Part]:
    """Return coat, shirt front, arms and hands below the head."""
    levels = np.array(
        [
            (-0.42, 0.20, 0.20),
            (-0.62, 0.22, 0.22),
            (-0.74, 0.46, 0.28),
            (-0.86, 0.72, 0.34),
            (-1.02, 0.84, 0.40),
            (-1.5, 0.84, 0.50),
            (-2.4, 0.86, 0.50),
            (-3.4, 0.95, 0.52),
        ]
    )
    z = np.linspace(-3.4, -0.42, 160)
    half, deep = (np.interp(z, levels[::-1, 0], levels[::-1, k]) for k in (1, 2))
    half, deep = blurred(half[:, None], 3.0)[:, 0], blurred(deep[:, None], 3.0)[:, 0]
    turn = np.linspace(0, 2 * np.pi, 201)
    power = [np.sign(f) * np.abs(f) ** 0.8 for f in (np.cos(turn), np.sin(turn))]
    crease = 1 + 0.035 * (noise((160, 201), (7, 10), seed) - 0.5)
    x, y = half[:, None] * power[0] * crease, deep[:, None] * power[1] * crease
    body = surface(
        np.stack([x, y, np.broadcast_to(z[:, None], x.shape)], axis=2), around=(False, True)
    )
    front = y < 0
    opening = (
        np.clip((0.30 * np.clip((z[:, None] + 1.5) / 0.95, 0, 1) - np.abs(x)) * 30, 0, 1) * front
    )
    tone = mix(np.full((*x.shape, 3), COAT), SHIRT, opening)
    lapel = (
        np.exp(
            -(((np.abs(x) - 0.30 * np.clip((z[:, None] + 1.5) / 0.95, 0, 1) - 0.12) / 0.02) ** 2)
        )
        * front
        * (z[:, None] > -1.55)
    )
    tie = np.clip((0.06 - np.abs(x)) * 40, 0, 1) * front * (z[:, None] > -1.3)
    tone = mix(mix(tone, (0.04, 0.04, 0.04), lapel), (0.07, 0.07, 0.08), tie)
    arms, hands = [], []
    for s in (-1, 1):
        hand = (s * 0.30, -0.72, -2.35 - 0.08 * s) if folded else (s * 0.75, -0.62, -3.1)
        path = curve(
            [(s * 0.74, 0, -0.98), (s * 0.94, 0.0, -1.45), (s * 1.00, -0.15, -2.2), hand], 80
        )
        arms.append(
            tube(
                path, np.linspace(0.24, 0.16, 80) * (1 + 0.02 * np.sin(np.linspace(0, 40, 80))), 30
            )
        )
        hands.append(
            lathe(ball(0.17), 24)
            .scaled(1.2, 0.9, 0.8)
            .moved(hand[0] - 0.1 * s, hand[1] - 0.1, hand[2])
        )
    shoulders = [lathe(ball(0.23), 30).moved(s * 0.72, 0, -0.98) for s in (-1, 1)]
    buttons = joined(
        [
            lathe(ball(0.045), 16).moved(s * 0.2, -0.53, h)
            for s in (-1, 1)
            for h in (-1.75, -2.1, -2.45, -2.8)
        ]
    )
    return [
        Part(body, matt(tone[::-1])),
        Part(joined([*arms, *shoulders]), matt(COAT)),
        Part(joined(hands), matt(SKIN)),
        Part(buttons, coated((0.75, 0.72, 0.6), gloss=0.7)),
    ]


def sitter(
    seed: int, *, capped: bool, beard: bool, folded: bool = False, turn: float = 0.0
) -> list[Part]:
    """Return one person around the origin."""
    face = [*head(seed=seed, beard=beard), *(cap() if capped else [])]
    turned = [Part(part.mesh.turned("z", turn), part.material) for part in face]
    neck = lathe([(0.19, -0.75), (0.17, -0.3)], 40)
    trunk = [
        Part(part.mesh.turned("z", turn * 0.5).moved(z=0.12), part.material)
        for part in torso(seed=seed, folded=folded)
    ]
    return [*turned, Part(neck, matt(SKIN)), *trunk]
