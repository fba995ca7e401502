"""Box B-042 and folder F-012: the portrait studio in Quay Street."""

from __future__ import annotations

import numpy as np
import shapely
from catalogue import picture
from materials import BRASS, OLD_BRASS, bumped, coated, glass, matt, metal
from meshes import box, joined, lathe, rounded, slab, surface, tube
from PIL import ImageDraw
from prints import label, sepia
from ropes import laid_rope
from shapes import ball, curve, disc
from sitters import likeness
from studio import Part, View
from textures import aged_paper, array_of, canvas, centred, clouds, mix, noise, plain, wood

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
            matt(label((680, 220), [("QUAY STREET", 62), ("¼ plates 1–24", 60)], seed=3)),
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


@picture(
    "1987.412.9_front.jpg",
    View(height_deg=26, side_deg=32, light_deg=-75, ground=0.62, depth=8, seed=63),
    samples=14,
)
def portrait_lens() -> list[Part]:
    """Lay the lens on its side, glass toward us; the cap lies in front."""
    barrel = lathe(
        rounded(
            [
                (2.6, 0),
                (3.6, 0),
                (3.7, 0.2),
                (3.7, 1.0),
                (3.2, 1.2),
                (3.1, 4.5),
                (3.6, 4.6),
                (3.6, 5.4),
                (3.1, 5.5),
                (3.1, 10.5),
                (4.2, 11.0),
                (4.3, 11.3),
                (4.3, 13.9),
                (4.15, 14.2),
                (3.95, 14.1),
                (3.7, 11.8),
                (0, 11.7),
            ],
            reach=0.1,
        )
    )
    flange = slab(
        disc(5.0)
        .difference(disc(3.0))
        .difference(
            shapely.unary_union(
                [disc(0.2, 4.4 * np.cos(a), 4.4 * np.sin(a)) for a in np.radians([30, 150, 270])]
            )
        ),
        0.35,
        0.06,
    ).moved(z=2.6)
    bulge = [(r, 12.3 + 0.9 - 0.065 * r * r) for r in np.linspace(0, 3.7, 30)]
    front = lathe(bulge[::-1])
    dark = lathe([(3.8, 11.85), (0, 11.8)])
    rack = box(0.5, 0.7, 4.4, 0.05).moved(3.3, 0, 6.0)
    knob = joined(
        [
            lathe(
                rounded(
                    [(0, 0), (1.1, 0), (1.2, 0.15), (1.2, 0.75), (1.1, 0.9), (0, 0.9)], reach=0.1
                ),
                60,
            )
            .turned("x", 90)
            .moved(3.9, -1.1, 7.6),
            tube(np.array([[3.9, -1.3, 7.6], [3.9, 1.2, 7.6]]), 0.25),
        ]
    )
    turn = [
        m.turned("x", 90).turned("y", 90).turned("z", 0).moved(0, 7.2, 5.0)
        for m in (barrel, flange, front, dark, rack, knob)
    ]
    brass = metal(mix(OLD_BRASS, BRASS, clouds((512, 512), 60, 6)), rough=0.24)
    cap = lathe(
        rounded(
            [(0, 1.5), (4.0, 1.5), (4.45, 1.35), (4.5, 1.1), (4.5, 0), (4.4, 0)][::-1], reach=0.15
        )
    )
    leather = coated(plain((0.17, 0.07, 0.06), spread=0.3, seed=3, blob=20), gloss=0.45)
    return [
        Part(joined([turn[0], turn[1], turn[4], turn[5]]), brass),
        Part(turn[2], coated((0.03, 0.035, 0.05), gloss=0.97, coat=1.0)),
        Part(turn[3], matt((0.02, 0.02, 0.02))),
        Part(cap.moved(-8.0, -3.2), leather),
    ]


@picture(
    "1987.412.10a_front.jpg",
    View(height_deg=48, side_deg=6, light_deg=-52, ground=0.63, seed=64, bar_left=True),
)
def shutter_release() -> list[Part]:
    """Lay the bulb down, its tube in a loose loop."""
    shape = [(max(r, 0.0), z) for r, z in ball(2.6)]
    bulb = lathe([(r, z * 1.25) for r, z in shape][:-3] + [(0.75, 3.3), (0.65, 4.3), (0.62, 4.6)])
    rubber = coated(
        mix((0.30, 0.12, 0.09), (0.44, 0.24, 0.18), clouds((512, 512), 40, 8)), gloss=0.32
    )
    cracks = np.abs(2 * clouds((512, 512), 12, 4) - 1)
    ring = lathe([(0.7, 4.3), (0.85, 4.4), (0.85, 5.0), (0.7, 5.1)])
    put = [m.turned("y", 82).turned("z", 168).moved(-4, -1.5, 2.6) for m in (bulb, ring)]
    path = curve(
        [
            [-8.2, -0.6, 2.9],
            [-11.0, 1.2, 0.9],
            [-9.6, 5.2, 0.45],
            [-3, 7.4, 0.45],
            [5, 6.2, 0.45],
            [8.2, 2.2, 0.45],
            [5.4, -1.4, 0.45],
            [1.6, 1.2, 0.45],
            [3.6, 4.8, 0.5],
            [9.8, 4.6, 1.2],
            [13.2, 1.4, 0.45],
            [12.8, -2.0, 0.45],
        ],
        500,
    )
    tip = (
        lathe(rounded([(0.5, 0), (0.62, 0.1), (0.62, 0.9), (0.35, 1.1), (0.35, 2.0), (0, 2.0)]))
        .turned("x", 90)
        .moved(12.8, -2.0, 0.5)
    )
    return [
        Part(put[0], bumped(rubber, np.clip(cracks * 4, 0, 1), depth=0.12)),
        Part(tube(path, 0.42, 24), rubber),
        Part(joined([put[1], tip]), metal(OLD_BRASS, rough=0.3)),
    ]


@picture(
    "1987.412.11_front.jpg", View(height_deg=52, side_deg=-14, light_deg=-60, ground=0.58, seed=65)
)
def album() -> list[Part]:
    """Lay the lacquer album flat: a crane, a moon and a pine in gold."""
    rows, columns = 1100, 1500
    lacquer = canvas(np.full((rows, columns, 3), (0.045, 0.04, 0.042)))
    draw = ImageDraw.Draw(lacquer)
    gold, red = (188, 148, 70), (138, 34, 26)
    draw.rectangle((40, 40, columns - 40, rows - 40), outline=gold, width=7)
    draw.ellipse((980, 130, 1290, 440), fill=(196, 168, 104))
    for k in range(5):
        y = 900 + 34 * k
        draw.line(
            [(x, y + 14 * np.sin(x / 70 + k)) for x in range(70, columns - 70, 10)],
            fill=gold,
            width=4,
        )
    draw.line(
        [(180, 1000), (260, 760), (240, 560), (360, 420), (540, 330)],
        fill=(120, 88, 40),
        width=26,
        joint="curve",
    )
    for x, y, r in (
        (540, 330, 120),
        (360, 420, 110),
        (260, 610, 120),
        (430, 520, 100),
        (190, 760, 90),
    ):
        for a in np.radians(np.arange(-180, 1, 9)):
            draw.line((x, y, x + r * np.cos(a), y + r * 0.62 * np.sin(a)), fill=gold, width=5)
    crane = [
        (760, 600),
        (900, 560),
        (1010, 480),
        (1130, 400),
        (1060, 540),
        (1180, 520),
        (1060, 620),
        (980, 680),
        (860, 690),
        (800, 660),
    ]
    draw.polygon(crane, fill=(222, 214, 192))
    draw.line(
        [(770, 620), (700, 570), (660, 590), (612, 620)],
        fill=(222, 214, 192),
        width=22,
        joint="curve",
    )
    draw.ellipse((646, 566, 686, 604), fill=red)
    draw.line([(960, 680), (1060, 790), (1160, 850)], fill=gold, width=9, joint="curve")
    face = array_of(lacquer)
    worn = np.clip((noise((rows, columns), (4, 4), 5) - 0.95) * 12, 0, 0.6)
    cover = slab(shapely.box(-10.25, -7.5, 10.25, 7.5).buffer(-0.25).buffer(0.25), 0.5, 0.1)
    pages = [
        box(19.6, 14.4, 0.24, 0.02).moved(0.1 + 0.05 * (-1) ** k, 0.03 * (k % 3), 0.5 + 0.25 * k)
        for k in range(11)
    ]
    spine = box(0.9, 15.0, 3.9, 0.1).moved(-9.9, 0, 0.05)
    silk = coated(plain((0.42, 0.10, 0.10), spread=0.3, seed=2, blob=14), gloss=0.25, sheen=0.5)
    tie = joined(
        [
            tube(
                curve(
                    [
                        [3.5, -7.65, 0.1],
                        [3.5, -7.75, 2.0],
                        [3.5, -7.55, 3.75],
                        [3.5, 0, 3.86],
                        [3.5, 7.55, 3.75],
                        [3.5, 7.75, 2],
                        [3.5, 7.65, 0.1],
                    ],
                    140,
                ),
                0.13,
            )
        ]
    )
    return [
        Part(cover, coated((0.05, 0.045, 0.045), gloss=0.9, coat=1.0)),
        Part(joined(pages), matt(aged_paper((400, 400), seed=4))),
        Part(spine, silk),
        Part(cover.moved(z=3.28), coated(mix(face, (0.30, 0.2, 0.14), worn), gloss=0.92, coat=1.0)),
        Part(tie, laid_rope((0.72, 0.66, 0.52))),
    ]


def card_photograph(
    size: tuple[int, int],
    portraits: list[tuple[np.ndarray, tuple[int, int]]],
    words: str,
    *,
    seed: int,
) -> np.ndarray:
    """Return a mount with pictures (array, left upper corner) pasted on and a line of gilt words."""
    columns, rows = size
    mount = aged_paper((rows, columns), (0.82, 0.75, 0.60), seed)
    for image, (x, y) in portraits:
        mount[y : y + image.shape[0], x : x + image.shape[1]] = image
    sheet = canvas(mount)
    draw = ImageDraw.Draw(sheet)
    draw.rectangle((12, 12, columns - 12, rows - 12), outline=(128, 92, 44), width=4)
    centred(
        draw,
        (columns / 2, rows * 0.935),
        words,
        int(rows * 0.036),
        fill=(104, 70, 30),
        name="DejaVuSerif-Italic",
    )
    return array_of(sheet)


def _curled(width: float, height: float, lift: float) -> object:
    x, y = np.meshgrid(
        np.linspace(-width / 2, width / 2, 60), np.linspace(-height / 2, height / 2, 60)
    )
    z = 0.12 + lift * (np.abs(x / width * 2) ** 3 + np.abs(y / height * 2) ** 3)
    return surface(np.stack([x, y, z], axis=2))


@picture(
    "1987.412.15_front.jpg", View(height_deg=80, side_deg=3, light_deg=-35, ground=0.50, seed=66)
)
def cabinet_card() -> list[Part]:
    """Lay the cabinet card flat."""
    crew = sepia(likeness("crew", (1450, 850)))
    face = card_photograph(
        (1650, 1080), [(crew, (100, 80))], "Quay Street Studio · Port Merrow", seed=6
    )
    return [Part(_curled(16.5, 10.8, 0.16), coated(face, gloss=0.35))]


@picture(
    "1987.412.16_front.png", View(height_deg=88, portrait=True, light_deg=-60, ground=0.42, seed=67)
)
def carte_de_visite() -> list[Part]:
    """Lay the card under the scanner's lamp."""
    image = sepia(likeness("stranger", (530, 780)))
    face = card_photograph((630, 1020), [(image, (50, 60))], "Quay Street Studio", seed=8)
    return [Part(_curled(6.3, 10.2, 0.06), coated(face, gloss=0.3))]
