"""Box B-042: glass negatives, nitrate film and ambrotype of the studio in Quay Street."""

from __future__ import annotations

import numpy as np
import shapely
from catalogue import picture
from likenesses import likeness
from materials import BRASS, bumped, coated, glass, matt, metal
from meshes import joined, lathe, rounded, tube
from prints import label
from shapes import disc
from slabs import box, slab
from studio import Part, View
from textures import clouds, mix, noise, plain, wood

PINE = ((0.78, 0.60, 0.38), (0.60, 0.42, 0.24))


@picture(
    "1987.412.2_front.jpg",
    View(height_deg=40, side_deg=-30, light_deg=-62, ground=0.60, depth=7, seed=60),
    samples=12,
)
def glass_negatives() -> list[Part]:
    """Stand the plates on edge in their slotted box, one drawn up and one leaning outside."""
    long, wide, high = 17.0, 11.6, 8.0
    pine = coated(wood(*PINE, seed=3, rings=6), gloss=0.25)
    wall = 0.7
    parts = [Part(box(long, wide, wall, 0.06), pine)]
    parts += [
        Part(box(long, wall, high, 0.06).moved(0, s * (wide - wall) / 2), pine) for s in (-1, 1)
    ]
    parts += [
        Part(box(wall, wide - 2 * wall, high, 0.06).moved(s * (long - wall) / 2), pine)
        for s in (-1, 1)
    ]
    parts.append(
        Part(
            slab(shapely.box(-3.4, 0, 3.4, 2.2), 0.03, 0.01)
            .turned("x", 90)
            .moved(0, -wide / 2 - 0.02, 3.4),
            matt(label((680, 220), [("QUAY STREET", 62), ("¼ plates 1 to 24", 60)], seed=3)),
        )
    )
    slots = [
        box(0.18, 0.35, high - 1.0, 0.03).moved(-7.2 + 0.6 * k, s * (wide / 2 - wall - 0.15), wall)
        for k in range(25)
        for s in (-1, 1)
    ]
    parts.append(
        Part(joined(slots), coated(wood((0.6, 0.45, 0.27), (0.5, 0.35, 0.2), seed=8), gloss=0.1))
    )
    green = glass((0.86, 0.96, 0.90))
    for k in range(22):
        lifted = 3.2 if k == 13 else 0.0
        plate = box(0.2, 9.9, 8.2, 0.02).moved(-6.9 + 0.6 * k, 0, wall + 0.1 + lifted)
        parts.append(
            Part(plate, green if lifted else coated((0.10, 0.13, 0.12), gloss=0.9, coat=1.0))
        )
    negative = 1 - likeness("boy", (520, 640))
    film = mix((0.10, 0.095, 0.09), (0.86, 0.85, 0.82), np.clip(negative, 0, 1) ** 1.2)
    out = (
        slab(shapely.box(-4.1, 0, 4.1, 10.4), 0.2, 0.02)
        .turned("x", 72)
        .turned("z", 4)
        .moved(2.0, -wide / 2 - 3.6)
    )
    raised = box(8.0, 9.7, 0.01, 0.001).turned("y", 90).moved(-6.9 + 0.6 * 13 + 0.12, 0, wall + 7.4)
    parts += [Part(out, coated(film, gloss=0.9, coat=1.0)), Part(raised, coated(film, gloss=0.6))]
    return parts


@picture(
    "1987.412.3_front.jpg",
    View(height_deg=38, side_deg=0, light_deg=-50, ground=0.57, seed=61, bar_left=True),
)
def nitrate_tin() -> list[Part]:
    """Set the film tin down with its lid against it; one yellowed roll stands in front."""
    tin = mix(
        (0.50, 0.49, 0.46),
        (0.40, 0.27, 0.17),
        np.clip(clouds((512, 512), 40, 12) * 1.5 - 0.75, 0, 1),
    )
    sheet = metal(tin, rough=0.38, share=0.8 * np.ones((4, 4)))
    tray = lathe(
        rounded(
            [(0, 0), (6.3, 0), (6.5, 0.15), (6.5, 3.4), (6.4, 3.4), (6.4, 0.5), (0, 0.5)], reach=0.1
        )
    )
    lid = lathe(
        rounded(
            [
                (0, 1.5),
                (6.1, 1.5),
                (6.6, 1.4),
                (6.68, 1.2),
                (6.68, 0),
                (6.6, 0),
                (6.6, 1.1),
                (0, 1.15),
            ][::-1],
            reach=0.1,
        )
    )
    paper = label(
        (640, 360),
        [("NITRATE", 96), ("keep from heat", 50)],
        seed=9,
        colour=(0.88, 0.80, 0.60),
        ink=(0.5, 0.06, 0.05),
    )
    card = slab(shapely.box(-3.6, -2.0, 3.6, 2.0), 0.02, 0.005).moved(z=1.52)
    lean = [m.turned("x", 62).moved(0.8, 7.6, 5.9) for m in (lid, card)]
    parts = [Part(tray, sheet), Part(lean[0], sheet), Part(lean[1], matt(paper))]
    amber, spool = (
        coated((0.34, 0.20, 0.07), gloss=0.8, coat=0.6),
        coated((0.06, 0.06, 0.06), gloss=0.5),
    )
    for x, y, r in (
        (-3.2, 1.6, 1.9),
        (0.9, 2.8, 1.8),
        (3.9, 0.4, 2.0),
        (0.3, -1.6, 2.0),
        (-3.4, -2.7, 1.8),
        (3.0, -3.9, 1.6),
        (-0.4, -4.8, 1.3),
    ):
        coils = [(r * (0.3 + 0.7 * k / 40), 0.6 + (3.0 if k % 2 else 2.86)) for k in range(41)]
        parts += [
            Part(lathe([(r, 0.5), *coils[::-1], (0.2, 0.6)]).moved(x, y), amber),
            Part(
                lathe([(0.55, 0.5), (0.55, 3.8), (0.28, 3.8), (0.28, 2.0)], 40).moved(x, y), spool
            ),
        ]
    return parts


@picture(
    "1987.412.6_front.jpg", View(height_deg=50, side_deg=-8, light_deg=-68, ground=0.60, seed=62)
)
def ambrotype() -> list[Part]:
    """Open the case like a book: velvet left, portrait right."""
    case = slab(shapely.box(-4.1, -4.65, 4.1, 4.65).buffer(-0.2).buffer(0.2), 0.8, 0.12)
    frame = slab(
        shapely.box(-4.1, -4.65, 4.1, 4.65).difference(shapely.box(-3.6, -4.15, 3.6, 4.15)),
        0.35,
        0.08,
    ).moved(z=0.75)
    pressed = 0.5 + 0.5 * np.sin(np.hypot(*np.mgrid[-40:40:256j, -40:40:256j]))
    shellac = bumped(
        coated(plain((0.13, 0.07, 0.05), spread=0.2, seed=3), gloss=0.7, coat=0.4),
        pressed,
        depth=0.1,
    )
    cushion = slab(shapely.box(-3.55, -4.1, 3.55, 4.1), 0.35, 0.14).moved(z=0.7)
    leaf = noise((256, 256), (6, 6), 4)
    velvet = bumped(
        coated(plain((0.40, 0.07, 0.11), spread=0.3, seed=7, blob=30), gloss=0.05, sheen=1.0),
        leaf,
        depth=0.5,
    )
    oval = shapely.affinity.scale(disc(1.0), 2.35, 2.95)
    mat = slab(shapely.box(-3.5, -4.05, 3.5, 4.05).difference(oval), 0.12, 0.04).moved(z=0.85)
    rim = slab(shapely.affinity.scale(disc(1.0), 2.5, 3.1).difference(oval), 0.06, 0.02).moved(
        z=0.96
    )
    grey = likeness("pilot", (700, 810)) * 0.85
    image = box(7.0, 8.1, 0.02, 0.004).moved(z=0.82)
    left = [m.turned("y", 8).moved(-4.45, 0, 0.45) for m in (case, frame, cushion)]
    right = [m.moved(4.2) for m in (case, frame, mat, rim, image)]
    hinge = joined(
        [tube(np.array([[-0.1, y, 0.75], [-0.1, y + 1.6, 0.75]]), 0.22) for y in (-3.4, 1.8)]
    )
    gilt = metal(mix((0.62, 0.47, 0.22), (0.80, 0.66, 0.36), clouds((256, 256), 30, 5)), rough=0.35)
    return [
        Part(joined([left[0], left[1], right[0], right[1]]), shellac),
        Part(left[2], velvet),
        Part(joined([right[2], right[3]]), gilt),
        Part(
            right[4],
            coated(mix((0.05, 0.04, 0.035), (0.90, 0.82, 0.70), grey), gloss=0.85, coat=1.0),
        ),
        Part(hinge, metal(BRASS, rough=0.3)),
    ]
