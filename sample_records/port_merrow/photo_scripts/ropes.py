"""Rope, cord and thread."""

from __future__ import annotations

import numpy as np
from materials import Colour, Material, bumped, matt
from textures import noise

HEMP: Colour = (0.66, 0.55, 0.38)


def laid_rope(light: Colour, *, strands: float = 3.0) -> Material:
    """Return laid rope: the strands run slantwise across the texture."""
    rows, columns = np.mgrid[0:256, 0:256] / 256
    wave = np.abs(np.sin(np.pi * (rows * strands + columns * 1.0)))
    tone = np.clip(0.45 + 0.55 * wave**0.6, 0, 1) * (0.85 + 0.15 * noise((256, 256), (1, 6), 3))
    return bumped(matt(np.asarray(light) * tone[..., None], (1.0, 1.0)), wave, depth=0.12)
