"""Box B-058: the pike in its case."""

from __future__ import annotations

import numpy as np
import shapely
from catalogue import picture
from materials import coated, matt, metal
from meshes import joined, relief, tube
from pike import pike_parts
from prints import label
from shapes import curve
from slabs import box, slab
from studio import Part, View
from textures import clouds, mix, noise, plain


@picture(
    "1926.18_front.jpg",
    View(height_deg=9, side_deg=-9, light_deg=-40, ground=0.60, depth=7, seed=73),
    samples=16,
)
def pike_case() -> list[Part]:
    """Stand the case with its fish, reeds and label.

    The pane is left out: glass would keep the soft boxes from lighting the inside.
    """
    wide, high, deep = 52.0, 24.0, 13.0
    black = coated(plain((0.07, 0.06, 0.055), spread=0.3, seed=4), gloss=0.6, coat=0.3)
    gilt = metal(mix((0.58, 0.43, 0.2), (0.78, 0.62, 0.32), clouds((256, 256), 30, 9)), rough=0.35)
    outer = shapely.box(-wide / 2, 0, wide / 2, high)
    frame = slab(outer.difference(outer.buffer(-1.6, join_style="mitre")), 1.0, 0.12)
    fillet = slab(
        outer.buffer(-1.6, join_style="mitre").difference(outer.buffer(-2.1, join_style="mitre")),
        0.6,
        0.12,
    )
    stand = [m.turned("x", 90).moved(y=-deep / 2) for m in (frame, fillet)]
    walls = [
        box(wide, deep, 1.0, 0.05),
        box(wide, deep, 1.0, 0.05).moved(z=high - 1),
        *[box(1.0, deep, high, 0.05).moved(x=s * (wide / 2 - 0.5)) for s in (-1, 1)],
    ]
    v = np.mgrid[0:400, 0:800][0] / 400
    sky = mix((0.64, 0.74, 0.74), (0.84, 0.84, 0.72), np.clip(v * 1.3, 0, 1))
    sky = mix(
        sky, (0.47, 0.56, 0.40), np.clip(v * 2 - 1.1 + 0.3 * clouds((400, 800), 50, 4), 0, 1) * 0.8
    )
    back = (
        slab(shapely.box(-wide / 2 + 1, 0, wide / 2 - 1, high), 0.3)
        .turned("x", 90)
        .moved(y=deep / 2 - 0.1)
    )
    shingle = 1.2 + 0.9 * clouds((90, 300), 12, 6) + 0.25 * noise((90, 300), (1.5, 1.5), 7)
    bed = relief(shingle, np.ones((90, 300)), (wide - 2, deep - 1.6))
    gravel = mix((0.58, 0.49, 0.36), (0.34, 0.28, 0.2), noise((256, 512), (2, 2), 3))
    rng = np.random.default_rng(8)
    reeds = []
    for _ in range(46):
        x, y = rng.uniform(-23, 23), rng.uniform(1.8, 5.2)
        tall, lean = rng.uniform(8, 18.5), rng.uniform(-3, 3)
        reeds.append(
            tube(
                curve([[x, y, 1], [x + lean * 0.3, y, tall * 0.5], [x + lean, y - 0.4, tall]], 24),
                np.linspace(0.26, 0.05, 24),
                8,
            )
        )
    plate = label(
        (900, 200),
        [("PIKE · 14 lb 6 oz", 62), ("taken in Merrow Pool, 1911", 44)],
        seed=5,
        colour=(0.92, 0.86, 0.68),
    )
    card = (
        slab(shapely.box(-6.3, 0, 6.3, 2.6), 0.05, 0.02)
        .turned("x", 80)
        .moved(13.0, -deep / 2 + 1.6, 2.1)
    )
    return [
        Part(joined([stand[0], *walls]), black),
        Part(stand[1], gilt),
        Part(back, matt(sky)),
        Part(bed, matt(gravel)),
        Part(
            joined(reeds),
            matt(mix((0.43, 0.48, 0.22), (0.62, 0.55, 0.30), noise((64, 64), (8, 8), 2))),
        ),
        Part(card, matt(plate)),
        *[Part(part.mesh.moved(-1.0, 0.3, 11.6), part.material) for part in pike_parts()],
    ]
