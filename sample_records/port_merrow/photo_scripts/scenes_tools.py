"""Box B-027: pilots' and fishers' tools of lead, wood and brass."""

from __future__ import annotations

import numpy as np
import shapely
from catalogue import picture
from materials import BRASS, OLD_BRASS, STEEL, coated, metal
from meshes import joined, lathe, rounded, tube
from ropes import HEMP, laid_rope
from shapely.geometry import LineString
from shapes import ball, curve, helix
from slabs import slab
from studio import Part, View
from textures import clouds, mix, plain, wood


@picture("1931.14.2_front.jpg", View(height_deg=34, side_deg=6, light_deg=-60, ground=0.60, seed=2))
def sounding_lead() -> list[Part]:
    """Set the lead beside its coiled line and toggle."""
    body = lathe(
        rounded(
            [
                (0, 0),
                (1.5, 0),
                (1.9, 0.25),
                (2.05, 1.5),
                (1.5, 11),
                (0.95, 15.2),
                (0.8, 16.4),
                (0, 16.6),
            ],
            reach=0.3,
        )
    )
    tone = mix((0.36, 0.37, 0.39), (0.68, 0.68, 0.68), clouds((512, 512), 40, 5) ** 2)
    eye = tube(
        np.array(
            [[0.75 * np.cos(a), 0, 16.6 + 0.9 * np.sin(a)] for a in np.linspace(0, 2 * np.pi, 60)]
        ),
        0.3,
    )
    lead = joined([body, eye]).turned("y", 90).turned("z", 24).moved(-9.5, -3.4, 2.0)
    rounds = [
        helix(4.6 - 0.25 * (k % 3), 3.0, 0.4) + np.array([5.2, 3.4, 0.45 + 0.75 * k])
        for k in range(4)
    ]
    coil = np.concatenate([r[k * 7 :] for k, r in enumerate(rounds)])
    tail = curve([[9.2, 3.0, 2.9], [7.8, -2.6, 0.6], [9.9, -5.0, 0.4], [6.2, -5.6, 0.4]], 160)
    line = [tube(coil, 0.36, lay=1.3), tube(tail, 0.36, lay=1.3)]
    strop = tube(curve([[6.2, 3.6, 0.4], [3.9, -0.5, 0.7], [5.2, 4.2, 1.8]], 90), 0.36, lay=1.3)
    toggle = lathe(
        rounded([(0, 0), (0.55, 0.1), (0.72, 1.2), (0.5, 2.4), (0.72, 3.6), (0.55, 4.7), (0, 4.8)])
    )
    return [
        Part(lead, metal(tone, rough=0.55, share=0.6)),
        Part(joined([*line, strop]), laid_rope(HEMP)),
        Part(
            toggle.turned("y", 90).turned("z", 35).moved(3.4, -6.4, 0.75),
            coated(wood((0.72, 0.56, 0.36), (0.5, 0.35, 0.2), seed=4), gloss=0.45),
        ),
    ]


@picture(
    "1931.14.7_front.jpg",
    View(height_deg=58, side_deg=-4, light_deg=-35, ground=0.62, seed=3, bar_left=True),
)
def marlinspike() -> list[Part]:
    """Lay the spike on its side."""
    spike = lathe(
        rounded(
            [
                (0, 0),
                (0.15, 0.3),
                (0.9, 7),
                (1.25, 12.5),
                (1.05, 13.4),
                (1.6, 14.0),
                (1.7, 15.2),
                (1.2, 16),
                (1.25, 16.4),
                (1.7, 17.2),
                (1.2, 18.2),
                (0, 18.5),
            ],
            reach=0.3,
        )
    )
    grain = wood((0.82, 0.66, 0.40), (0.62, 0.43, 0.22), seed=9, rings=5)
    worn = grain * (0.8 + 0.2 * clouds((1024, 1024), 120, 8)[..., None])
    spike = spike.turned("y", 90).turned("z", 8).moved(-9, -1.2, 1.7)
    lanyard = tube(
        curve(
            [
                [8.1, -1.4, 1.7],
                [8.9, 1.2, 0.6],
                [7.0, 3.2, 0.2],
                [3.6, 3.0, 0.2],
                [1.4, 4.4, 0.2],
                [4.0, 5.2, 0.2],
                [6.4, 4.2, 0.2],
            ],
            260,
        ),
        0.17,
        lay=2.5,
    )
    return [
        Part(spike, coated(np.swapaxes(worn, 0, 1), gloss=0.6)),
        Part(lanyard, laid_rope((0.72, 0.66, 0.55))),
    ]


@picture("PMM.77.3_front.jpg", View(height_deg=66, side_deg=10, light_deg=-70, ground=0.58, seed=4))
def parallel_rule() -> list[Part]:
    """Open the rule a little, links slanting."""
    bar = slab(shapely.box(-7.6, -0.95, 7.6, 0.95), 0.55, 0.08)
    ebony = wood((0.16, 0.12, 0.10), (0.06, 0.05, 0.045), seed=12, rings=14)
    parts = [
        Part(bar.moved(-0.9, 1.7), coated(ebony, gloss=0.62, coat=0.3)),
        Part(bar.moved(0.9, -1.7), coated(ebony, gloss=0.62, coat=0.3)),
    ]
    brass = metal(mix(OLD_BRASS, BRASS, clouds((256, 256), 30, 3)), rough=0.28)
    for x in (-4.7, 4.7):
        link = LineString([(x - 0.9, 1.7), (x + 0.9, -1.7)]).buffer(0.42, quad_segs=24)
        parts.append(Part(slab(link, 0.16, 0.03).moved(z=0.56), brass))
        rivet = lathe([(0.26, 0), (0.26, 0.12), (0.18, 0.2), (0, 0.21)])
        ends = ((x - 0.9, 1.7), (x + 0.9, -1.7))
        parts += [Part(rivet.moved(*end, 0.7), metal(STEEL, rough=0.25)) for end in ends]
    knob = lathe(
        rounded(
            [(0.35, 0), (0.2, 0.25), (0.2, 0.45), (0.5, 0.6), (0.5, 0.85), (0.35, 1.0), (0, 1.05)]
        )
    )
    parts += [Part(knob.moved(-0.9, 1.7, 0.55), brass), Part(knob.moved(0.9, -1.7, 0.55), brass)]
    return parts


@picture(
    "1987.412.10_front.jpg",
    View(height_deg=48, side_deg=-12, light_deg=-45, ground=0.63, warmth=0.5, seed=5),
)
def hat_pin_case() -> list[Part]:
    """Show the japanned case open, three pins in it and two before it."""
    shell = shapely.box(-8, -2.1, 8, 2.1).buffer(0.3, quad_segs=12)
    rim = shell.difference(shell.buffer(-0.18))
    japan = plain((0.055, 0.05, 0.05), spread=0.3, seed=5)
    coat = coated(japan, gloss=0.8, coat=0.5)
    tray = [slab(shell, 0.15), slab(rim, 1.4, 0.04)]
    lid = (
        joined([slab(shell, 0.15), slab(rim, 1.0, 0.04)])
        .moved(y=2.4)
        .turned("x", 106)
        .moved(y=2.5, z=1.35)
    )
    lining = coated(plain((0.42, 0.10, 0.13), spread=0.25, seed=8), gloss=0.05, sheen=1.0)
    bed = slab(shell.buffer(-0.25), 0.7, 0.1)
    parts = [Part(joined(tray), coat), Part(lid, coat), Part(bed.moved(z=0.12), lining)]
    heads = [
        (0.75, 0.08, 0.10),
        (0.05, 0.12, 0.4),
        (0.88, 0.86, 0.78),
        (0.02, 0.28, 0.2),
        (0.06, 0.06, 0.06),
    ]
    for k, tint in enumerate(heads):
        inside = k < 3
        y, z, turn = (
            (-1.1 + 1.1 * k, 1.3, 180.0 * (k % 2))
            if inside
            else (-4.1 - 1.5 * (k - 3), 0.5, 4.0 - 7 * (k - 3))
        )
        pin = tube(
            np.array([[-6.6, 0, 0], [5.6, 0, 0], [6.3, 0, 0], [6.6, 0, 0]]),
            np.array([0.075, 0.075, 0.05, 0.008]),
            16,
        )
        bead = lathe(ball(0.5), 48).moved(-6.8)
        parts += [
            Part(pin.turned("z", turn).moved(0, y, z), metal(STEEL, rough=0.2)),
            Part(bead.turned("z", turn).moved(0, y, z), coated(tint, gloss=0.93, coat=1.0)),
        ]
    return parts
