"""Folder F-012: card photographs."""

from __future__ import annotations

import numpy as np
from catalogue import picture
from likenesses import likeness
from materials import coated
from meshes import surface
from PIL import ImageDraw
from prints import sepia
from studio import Part, View
from textures import aged_paper, array_of, canvas, centred


def card_photograph(
    size: tuple[int, int],
    portraits: list[tuple[np.ndarray, tuple[int, int]]],
    words: str,
    *,
    seed: int,
) -> np.ndarray:
    """Return a mount with pictures (array, upper left corner) and a line of gilt words."""
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
