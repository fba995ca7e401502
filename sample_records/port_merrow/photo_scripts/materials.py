"""Descriptions of surfaces for the renderer, by the names a cataloguer would use."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import mitsuba as mi
import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Array = NDArray[np.float64]
Colour = tuple[float, float, float]
Material = dict[str, Any]


def picture(
    array: Array, *, raw: bool = False, tiles: tuple[float, float] = (1.0, 1.0)
) -> Material:
    """Return a texture of the array, repeated `tiles` times along u and v."""
    values = np.ascontiguousarray((np.clip(array, 0, 1) * 255 + 0.5).astype(np.uint8))
    values = np.ascontiguousarray((values[..., None] if values.ndim == 2 else values)[::-1])
    return {
        "type": "bitmap",
        "bitmap": mi.Bitmap(values),
        "raw": raw,
        "to_uv": mi.ScalarTransform4f().scale([tiles[0], tiles[1], 1]),
    }


def colour(value: Colour | Array, tiles: tuple[float, float] = (1.0, 1.0)) -> Material:
    """Return a plain sRGB colour or a picture as a texture."""
    if isinstance(value, tuple):
        linear = [((c + 0.055) / 1.055) ** 2.4 if c > 0.04045 else c / 12.92 for c in value]
        return {"type": "rgb", "value": linear}
    return picture(value, tiles=tiles)


def coated(
    value: Colour | Array,
    *,
    gloss: float,
    tiles: tuple[float, float] = (1.0, 1.0),
    coat: float = 0.0,
    sheen: float = 0.0,
) -> Material:
    """Return a non-metal: gloss 0 is chalk, 1 a wet glaze; `coat` adds varnish, `sheen` fuzz."""
    return {
        "type": "principled",
        "base_color": colour(value, tiles),
        "roughness": float(max(0.05, 1 - gloss)),
        "specular": 0.5 if gloss > 0.1 else 0.2,
        "clearcoat": coat,
        "clearcoat_gloss": 0.92,
        "sheen": sheen,
    }


def matt(value: Colour | Array, tiles: tuple[float, float] = (1.0, 1.0)) -> Material:
    """Return a surface without any gloss, the cheapest to render: paper, card, cloth."""
    return {"type": "diffuse", "reflectance": colour(value, tiles)}


def metal(
    value: Colour | Array,
    *,
    rough: float | Array = 0.3,
    tiles: tuple[float, float] = (1.0, 1.0),
    share: float | Array = 1.0,
) -> Material:
    """Return a metal of the colour; `rough` and `share` (how metallic) may be pictures."""
    return {
        "type": "principled",
        "base_color": colour(value, tiles),
        "roughness": picture(rough, raw=True, tiles=tiles)
        if isinstance(rough, np.ndarray)
        else rough,
        "metallic": picture(share, raw=True, tiles=tiles)
        if isinstance(share, np.ndarray)
        else share,
        "specular": 0.5,
    }


def bumped(
    inner: Material, heights: Array, *, depth: float, tiles: tuple[float, float] = (1.0, 1.0)
) -> Material:
    """Return the material with a fine relief; `depth` scales the heights."""
    texture = picture(heights, raw=True, tiles=tiles)
    return {"type": "bumpmap", "map": texture, "scale": depth, "inner": inner}


def cut_out(inner: Material, opacity: Array) -> Material:
    """Return the material only where the opacity picture is white."""
    return {
        "type": "mask",
        "opacity": picture(opacity, raw=True),
        "inner": {"type": "twosided", "inner": inner},
    }


def glass(tint: Colour = (1.0, 1.0, 1.0)) -> Material:
    """Return solid clear or tinted glass; close the body with a far and a near wall."""
    return {
        "type": "dielectric",
        "int_ior": 1.5,
        "specular_transmittance": {"type": "rgb", "value": list(tint)},
    }


def water(tint: Colour) -> Material:
    """Return a clear fluid; the tint is what one passage through its face keeps."""
    return {**glass(tint), "int_ior": 1.33}


def pane(tint: Colour = (1.0, 1.0, 1.0)) -> Material:
    """Return a thin sheet of glass without refraction."""
    return {
        "type": "thindielectric",
        "int_ior": 1.5,
        "specular_transmittance": {"type": "rgb", "value": list(tint)},
    }


BRASS: Colour = (0.82, 0.69, 0.44)
OLD_BRASS: Colour = (0.60, 0.48, 0.30)
STEEL: Colour = (0.66, 0.66, 0.67)
IRON: Colour = (0.27, 0.25, 0.24)
LEAD: Colour = (0.44, 0.45, 0.47)
COPPER: Colour = (0.85, 0.52, 0.38)
