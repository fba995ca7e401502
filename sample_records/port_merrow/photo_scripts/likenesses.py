"""Portraits of invented people, lit and taken like the objects."""

from __future__ import annotations

import tempfile
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

import mitsuba as mi
import numpy as np
import pyoidn
from materials import matt
from shapely.geometry import Polygon
from slabs import slab
from studio import Part, View, sky
from textures import blurred, clouds, noise

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Array = NDArray[np.float64]
from sitters import sitter


def moved(parts: list[Part], x: float, y: float, z: float) -> list[Part]:
    """Return the parts shifted."""
    return [Part(part.mesh.moved(x, y, z), part.material) for part in parts]


@cache
def likeness(who: str, size_px: tuple[int, int]) -> Array:
    """Return greys of a sitter ("pilot", "stranger", "boy") or of the "crew"."""
    if who == "crew":
        parts = [
            part
            for k in range(3)
            for part in moved(
                sitter(k + 5, capped=k != 1, beard=k != 2, turn=(18.0, 0.0, -16.0)[k]),
                2.05 * (k - 1),
                1.2,
                0.75,
            )
        ]
        parts += [
            part
            for k in range(3)
            for part in moved(
                sitter(
                    k + 9, capped=k != 0, beard=k == 1, folded=True, turn=(-12.0, 8.0, -20.0)[k]
                ),
                2.1 * (k - 1) + 0.15,
                -0.8,
                -1.0,
            )
        ]
        centre, tall = (0.05, -1.15), 5.3
    else:
        seed = {"pilot": 3, "stranger": 14, "boy": 22}[who]
        parts = sitter(
            seed,
            capped=who != "stranger",
            beard=who != "boy",
            turn=-22.0 if who == "stranger" else 14.0,
        )
        centre, tall = (0.0, -0.62), 3.2
    cloth = 0.52 + 0.16 * clouds((256, 256), 60, 5)
    wall = slab(Polygon([(-9, -9), (9, -9), (9, 9), (-9, 9)]), 0.1).turned("x", 90).moved(y=2.6)
    light = _taken(
        [*parts, Part(wall, matt(np.repeat(cloth[..., None], 3, axis=2)))], centre, tall, size_px
    )
    grey = np.clip(light / np.percentile(light, 99.3), 0, 1) ** (1 / 1.9)
    rows, columns = grey.shape
    y, x = np.mgrid[-1 : 1 : rows * 1j, -1 : 1 : columns * 1j]
    edge = np.clip(1.08 - 0.28 * (x**2 + y**2), 0, 1)
    return np.clip(
        blurred(grey, rows / 420) * edge + 0.03 * (noise(grey.shape, (1, 1), 7) - 0.5), 0, 1
    )


def _taken(
    parts: list[Part], centre: tuple[float, float], tall: float, size_px: tuple[int, int]
) -> Array:
    wide_deg = float(np.degrees(2 * np.arctan(tall / 2 / 16)))
    camera = mi.ScalarTransform4f().look_at(
        [centre[0], -16, centre[1]], [centre[0], 0, centre[1]], [0, 0, 1]
    )
    scene: dict[str, object] = {
        "type": "scene",
        "sky": sky(View(light_deg=-50, key=1.0)),
        "sensor": {
            "type": "perspective",
            "fov": wide_deg,
            "fov_axis": "y",
            "to_world": camera,
            "film": {
                "type": "hdrfilm",
                "width": size_px[0],
                "height": size_px[1],
                "rfilter": {"type": "box"},
                "pixel_format": "rgb",
            },
        },
    }
    with tempfile.TemporaryDirectory() as name:
        for index, part in enumerate(parts):
            path = Path(name) / f"{index}.ply"
            part.mesh.write_ply(path)
            scene[f"part{index}"] = {
                "type": "ply",
                "filename": str(path),
                "bsdf": {"type": "twosided", "inner": part.material},
            }
        loaded = mi.load_dict(scene)
    integrator = mi.load_dict({"type": "path", "max_depth": 4})
    pixels = np.array(mi.render(loaded, integrator=integrator, spp=24, seed=3))[..., :3].astype(
        np.float32
    )
    clean = pyoidn.denoise(np.ascontiguousarray(np.nan_to_num(pixels)), hdr=True)
    return np.asarray(clean, dtype=float) @ np.array([0.25, 0.60, 0.15])
