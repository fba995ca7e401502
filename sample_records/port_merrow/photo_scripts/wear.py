"""Metals as they look after a century of hands."""

from __future__ import annotations

import numpy as np
from materials import BRASS, OLD_BRASS
from textures import clouds, mix


def worn_brass(seed: int, size: int = 512) -> np.ndarray:
    """Return brass, bright where it was rubbed."""
    return mix(OLD_BRASS, BRASS, clouds((size, size), size / 10, seed))
