"""Box B-027: pilots' and fishers' tools."""

from __future__ import annotations

import numpy as np
import shapely
from catalogue import picture
from materials import BRASS, IRON, OLD_BRASS, STEEL, coated, metal, pane
from meshes import box, joined, lathe, relief, rounded, slab, tube
from prints import compass_rose, seal_face
from ropes import HEMP, laid_rope
from shapely.geometry import LineString, Polygon
from shapes import ball, curve, disc, helix
from studio import Part, View
from textures import clouds, mix, noise, plain, speckled, wood


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
        parts.extend(Part(
                    lathe([(0.26, 0), (0.26, 0.12), (0.18, 0.2), (0, 0.21)]).moved(*end, 0.7),
                    metal(STEEL, rough=0.25),
                ) for end in ((x - 0.9, 1.7), (x + 0.9, -1.7)))
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


@picture(
    "X.112_front.jpg",
    View(height_deg=27, side_deg=-24, light_deg=-80, ground=0.60, depth=9, seed=6),
    samples=16,
)
def artificial_horizon() -> list[Part]:
    """Set the trough under its glazed roof, the mercury bottle beside it."""
    outer = shapely.box(-8, -4.6, 8, 4.6).buffer(0.4, quad_segs=8)
    iron = metal(
        mix(IRON, (0.36, 0.24, 0.17), clouds((512, 512), 50, 6) ** 3), rough=0.5, share=0.7
    )
    trough = joined([slab(outer, 0.4, 0.08), slab(outer.difference(outer.buffer(-0.5)), 2.0, 0.1)])
    parts = [
        Part(trough, iron),
        Part(box(15.4, 8.6, 0.1, 0.01).moved(z=1.1), metal((0.86, 0.87, 0.88), rough=0.04)),
    ]
    rise, half, span = 5.4, 4.3, 7.4
    slope = float(np.degrees(np.arctan2(rise, half)))
    length = float(np.hypot(rise, half))
    frame = shapely.box(-span, 0, span, length)
    glazing = frame.difference(shapely.box(-span + 0.6, 0.6, span - 0.6, length - 0.6))
    wooden = coated(wood((0.50, 0.27, 0.14), (0.28, 0.13, 0.07), seed=6), gloss=0.6, coat=0.4)
    for side in (0, 180):
        leaf = slab(glazing, 0.45, 0.06).turned("x", slope).moved(y=-half, z=2.0).turned("z", side)
        sheet = (
            box(2 * span - 1, length - 1, 0.02, 0.002)
            .moved(y=length / 2, z=0.2)
            .turned("x", slope)
            .moved(y=-half, z=2.0)
            .turned("z", side)
        )
        parts += [Part(leaf, wooden), Part(sheet, pane((0.93, 0.97, 0.95)))]
    gable = (
        slab(Polygon([(-half, 0), (half, 0), (0, rise)]), 0.35, 0.05)
        .turned("x", 90)
        .turned("z", 90)
    )
    parts += [
        Part(gable.moved(x=-span - 0.05, z=2.0), wooden),
        Part(gable.moved(x=span - 0.3, z=2.0), wooden),
    ]
    bottle = lathe(
        rounded(
            [
                (0, 0),
                (1.7, 0),
                (1.9, 0.3),
                (1.9, 4.8),
                (0.9, 6.0),
                (0.8, 6.9),
                (1.1, 7.1),
                (1.1, 7.5),
                (0, 7.5),
            ],
            reach=0.25,
        )
    )
    stopper = lathe(rounded([(0.75, 0), (0.8, 0.5), (1.1, 0.8), (1.0, 1.5), (0, 1.7)]))
    parts += [
        Part(bottle.moved(11.4, -3.2), iron),
        Part(
            stopper.moved(11.4, -3.2, 7.5),
            coated(wood((0.80, 0.64, 0.40), (0.6, 0.42, 0.22), seed=2), gloss=0.5),
        ),
    ]
    return parts


@picture(
    "1954.3.19_front.jpg",
    View(height_deg=20, portrait=True, light_deg=-50, ground=0.58, seed=7, bar_left=True),
)
def bait_jar() -> list[Part]:
    """Stand the jar up with its rope handle fallen to one side."""
    jar = lathe(
        rounded(
            [
                (0, 0),
                (3.9, 0),
                (4.3, 0.35),
                (4.45, 6.8),
                (3.5, 9.4),
                (3.2, 10.1),
                (3.75, 10.5),
                (3.8, 11.5),
                (3.3, 11.8),
                (2.9, 10.8),
                (2.9, 9),
            ],
            reach=0.3,
        )
    )
    glaze = speckled((0.66, 0.50, 0.32), (0.34, 0.21, 0.11), seed=21, amount=0.07)
    rows = np.linspace(0, 1, 1024)[:, None, None]
    dipped = mix(
        glaze,
        glaze * np.array([0.56, 0.42, 0.32]),
        np.clip((0.42 - rows[..., 0] + 0.05 * noise((1024, 1024), (30, 60), 2)) * 9, 0, 1),
    )
    ears = [
        lathe([(0.5, -0.25), (0.72, 0), (0.5, 0.25), (0.3, 0), (0.5, -0.25)], 40)
        .turned("y", 90)
        .moved(s * 3.55, 0, 10.1)
        for s in (1, -1)
    ]
    rope = tube(
        curve(
            [
                [3.7, 0, 10.1],
                [4.6, -1.6, 10.6],
                [3.9, -4.4, 8.3],
                [0.5, -5.2, 6.6],
                [-3.4, -4.6, 8.1],
                [-4.6, -1.6, 10.5],
                [-3.7, 0, 10.1],
            ],
            260,
        ),
        0.27,
        lay=1.5,
    )
    knots = [
        lathe(rounded([(0, -0.5), (0.5, -0.4), (0.55, 0.3), (0, 0.5)], reach=0.45), 40).moved(
            s * 3.95, -0.5, 10.3
        )
        for s in (1, -1)
    ]
    return [
        Part(joined([jar, *ears]), coated(dipped, gloss=0.78, coat=0.7)),
        Part(joined([rope, *knots]), laid_rope(HEMP)),
    ]


@picture("2003.8.1_front.jpg", View(height_deg=74, side_deg=0, light_deg=-40, ground=0.56, seed=8))
def compass_card() -> list[Part]:
    """Lay the card face up."""
    card = slab(disc(6.9), 0.12, 0.03)
    cap = lathe(rounded([(0.85, 0), (0.8, 0.25), (0.45, 0.45), (0.3, 0.9), (0, 1.0)]))
    ring = slab(disc(6.95).difference(disc(6.75)), 0.22, 0.04)
    face = compass_rose()
    return [
        Part(card, coated(face, gloss=0.45, coat=0.3)),
        Part(cap.moved(z=0.12), metal(OLD_BRASS, rough=0.3)),
        Part(ring, metal(BRASS, rough=0.3)),
    ]


@picture(
    "2011.40.6_front.jpg",
    View(height_deg=70, side_deg=-8, light_deg=-55, ground=0.52, seed=9, bar_left=True),
)
def netting_needle() -> list[Part]:
    """Lay the needle with a little twine left on it."""
    upper = [(8, 0), (6.4, 0.75), (4.2, 1.15), (-7.0, 1.15), (-8, 0.95), (-7.2, 0.45), (-6.6, 0)]
    outline = (
        Polygon(upper + [(x, -y) for x, y in reversed(upper[1:-1])]).buffer(0.12).buffer(-0.06)
    )
    window = Polygon([(5.4, 0.45), (0.6, 0.72), (0.6, -0.72), (5.4, -0.45)]).buffer(0.12)
    tongue = Polygon([(0.4, 0.22), (4.3, 0.13), (4.6, 0), (4.3, -0.13), (0.4, -0.22)])
    bone = mix((0.87, 0.80, 0.64), (0.66, 0.54, 0.36), clouds((512, 512), 60, 3) ** 2 * 0.8)
    streaks = np.clip((noise((512, 512), (0.9, 30), 4) - 0.75) * 3, 0, 1)
    needle = slab(outline.difference(window).union(tongue), 0.38, 0.13)
    winds = []
    for k in range(5):
        y = -0.5 + 0.25 * k
        winds.append(
            curve(
                [[-7.0, y, 0.44], [-3, y * 0.9, 0.46], [0.2, y * 0.5, 0.46], [1.6, y * 0.25, 0.4]],
                120,
            )
        )
    tail = curve(
        [
            [-6.6, 0.3, 0.45],
            [-8.6, 0.9, 0.2],
            [-9.4, 2.4, 0.13],
            [-6.8, 3.3, 0.13],
            [-4.2, 2.6, 0.13],
            [-2.6, 3.4, 0.13],
        ],
        200,
    )
    twine = joined([tube(p, 0.1, 14, lay=4.0) for p in (*winds, tail)])
    return [
        Part(needle, coated(mix(bone, (0.5, 0.38, 0.22), streaks * 0.6), gloss=0.6)),
        Part(twine, laid_rope((0.50, 0.36, 0.22))),
    ]


def _seal() -> list[Part]:
    handle = lathe(
        rounded(
            [
                (0, 8.8),
                (1.0, 8.7),
                (1.55, 7.6),
                (1.3, 6.2),
                (0.75, 5.0),
                (0.7, 4.0),
                (1.05, 3.2),
                (1.0, 2.7),
                (0.9, 2.5),
            ][::-1],
            reach=0.4,
        )
    )
    brass = lathe(
        rounded(
            [
                (0, 0),
                (1.95, 0),
                (2.05, 0.12),
                (2.05, 0.7),
                (1.7, 0.95),
                (0.85, 1.25),
                (0.8, 1.9),
                (1.1, 2.2),
                (1.1, 2.6),
                (0, 2.6),
            ],
            reach=0.22,
        )
    )
    tone = mix(OLD_BRASS, BRASS, clouds((512, 512), 40, 11))
    return [
        Part(
            handle,
            coated(
                np.swapaxes(wood((0.47, 0.26, 0.14), (0.27, 0.13, 0.07), seed=15), 0, 1),
                gloss=0.66,
                coat=0.5,
            ),
        ),
        Part(brass, metal(tone, rough=0.26)),
    ]


@picture(
    "L2019.4_front.jpg",
    View(height_deg=16, side_deg=8, portrait=True, light_deg=-62, ground=0.62, seed=10),
)
def seal_standing() -> list[Part]:
    """Stand the seal on its die."""
    return _seal()


@picture("L2019.4_back.jpg", View(height_deg=62, side_deg=0, light_deg=-75, ground=0.60, seed=11))
def seal_die() -> list[Part]:
    """Lay the seal on its side, and beside it an impression in wax."""
    heights, opacity = seal_face()
    wax = relief(heights * 0.16 + 0.28 * opacity, opacity, (5.0, 5.0)).moved(3.4, 0.4)
    lying = [
        Part(p.mesh.turned("y", 90).turned("z", 200).moved(0.2, 1.2, 2.05), p.material)
        for p in _seal()
    ]
    return [*lying, Part(wax, coated((0.55, 0.07, 0.06), gloss=0.6, coat=0.3))]
