"""The photographer's table: grey card, scale bar, lights, camera, exposure."""

from __future__ import annotations

import tempfile
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import mitsuba as mi
import numpy as np
import pyoidn
from materials import colour, matt
from meshes import Mesh, surface
from scipy import ndimage
from slabs import box
from textures import array_of, font, noise

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Array = NDArray[np.float64]
from PIL import Image, ImageDraw

MARGIN_RATIO = 0.84
BAR_LENGTHS_CM = (2, 5, 10, 20, 50)


@dataclass(frozen=True, slots=True)
class Part:
    """One mesh and what it is made of."""

    mesh: Mesh
    material: dict[str, Any]


@dataclass(frozen=True, slots=True)
class View:
    """Where camera and light stand for one picture.

    `height_deg` is 90 for a picture straight from above; `light_deg` is where the main light
    stands, `key` its strength; `side_deg` turns the object; `ground` is the grey of the card on
    a screen; `depth` is how often light may bounce.
    """

    height_deg: float = 22.0
    side_deg: float = 0.0
    field_deg: float = 18.0
    portrait: bool = False
    light_deg: float = -50.0
    key: float = 1.0
    ground: float = 0.60
    warmth: float = 0.0
    bar_left: bool = False
    depth: int = 5
    seed: int = 1


@dataclass(frozen=True, slots=True)
class Camera:
    """A camera that sees the whole object and the bar."""

    place: Array
    target: Array
    up: Array


def _axes(view: View) -> tuple[Array, Array, Array]:
    height = np.radians(view.height_deg)
    back = np.array([0.0, -np.cos(height), np.sin(height)])
    right = np.array([1.0, 0.0, 0.0])
    return right, np.cross(back, right), back


def frame_camera(points: Array, view: View, aspect: float) -> Camera:
    """Return the camera that fits all points inside the margins."""
    right, up, back = _axes(view)
    target = points.mean(axis=0)
    half = np.tan(np.radians(view.field_deg) / 2)
    half_x, half_y = (half, half / aspect) if aspect > 1 else (half * aspect, half)
    distance = float(np.ptp(points, axis=0).max()) * 4
    for _ in range(25):
        local = points - target
        away = distance - local @ back
        x, y = (local @ right) / away / half_x, (local @ up) / away / half_y
        shift_x, shift_y = (x.max() + x.min()) / 2, (y.max() + y.min()) / 2
        target = target + (right * shift_x * half_x + up * shift_y * half_y) * distance
        distance *= float(max(np.ptp(x), np.ptp(y)) / 2 / MARGIN_RATIO) ** 0.9
    return Camera(target + back * distance, target, up)


def scale_bar(length_cm: int) -> list[Part]:
    """Return a scale bar of black and white blocks with its length, and a small grey card."""
    width, thick = length_cm, length_cm * 0.13
    picture = Image.new("L", (1200, 156), 244)
    draw = ImageDraw.Draw(picture)
    blocks = 5 if length_cm in {5, 50} else (4 if length_cm == 20 else min(10, length_cm))
    for index in range(blocks):
        left, right = 20 + 1160 * index / blocks, 20 + 1160 * (index + 1) / blocks
        top = (12, 44) if index % 2 == 0 else (44, 76)
        draw.rectangle((left, top[0], right, top[1]), fill=18)
    draw.rectangle((20, 12, 1180, 76), outline=18, width=3)
    draw.text((600, 115), f"{length_cm} cm", fill=18, font=font(58, "DejaVuSans"), anchor="mm")
    bar = box(width * 1200 / 1160, thick, length_cm * 0.012, 0.002 * length_cm)
    face = np.repeat(array_of(picture)[..., None], 3, axis=2)
    card = box(thick * 1.9, thick, length_cm * 0.012, 0.002 * length_cm)
    offset = width / 2 + thick * 1.25
    return [
        Part(bar, matt(face)),
        Part(card.moved(x=offset), matt((0.466, 0.466, 0.466))),
    ]


def _bar_for(parts: list[Part], view: View, aspect: float) -> list[Part]:
    points = np.concatenate([part.mesh.points for part in parts])
    low, high = points.min(axis=0), points.max(axis=0)
    across = max(high[0] - low[0], (high[1] - low[1] + (high[2] - low[2])) * aspect * 0.75)
    fitting = [length for length in BAR_LENGTHS_CM if length <= across * 0.52]
    bar = scale_bar(fitting[-1] if fitting else 1)
    if view.height_deg < 55:
        lean = 0.6 * (90 - view.height_deg)
        bar = [Part(part.mesh.turned("x", lean), part.material) for part in bar]
        sunk = float(bar[0].mesh.points[:, 2].min())
        bar = [Part(part.mesh.moved(z=-sunk), part.material) for part in bar]
    length = np.ptp(bar[0].mesh.points[:, 0])
    total = np.concatenate([part.mesh.points for part in bar])
    y = low[1] - length * 0.16
    if view.bar_left:
        x = min(low[0], (low[0] + high[0]) / 2 - np.ptp(total[:, 0]) / 2) - total[:, 0].min()
    else:
        x = max(high[0], (low[0] + high[0]) / 2 + np.ptp(total[:, 0]) / 2) - total[:, 0].max()
    return [Part(part.mesh.moved(x=float(x), y=float(y)), part.material) for part in bar]


def _ground(view: View, size: float, middle: Array) -> Part:
    """Return the grey card; for standing objects it bends upward behind them."""
    s = np.linspace(-1, 1, 160)
    bend = middle[1] + size * 1.6
    y = middle[1] + s * size * 6
    flat = view.height_deg > 55
    rise = np.where((y > bend) & (not flat), (y - bend) ** 2 / (size * 2.2), 0.0)
    x = np.linspace(-size * 7, size * 7, 40) + middle[0]
    grid = np.stack([*np.meshgrid(x, y), np.repeat(rise[:, None], 40, axis=1)], axis=2)
    tone = view.ground * (1 + 0.012 * (noise((512, 512), (1.2, 1.2), view.seed) - 0.5))
    card = np.stack(
        [tone * (1 + 0.02 * view.warmth), tone, tone * (1 - 0.02 * view.warmth)], axis=2
    )
    return Part(surface(grid), matt(card, tiles=(14, 14)))


def sky(view: View) -> dict[str, Any]:
    """Return soft boxes and the dim room as an environment, one picture."""
    rows, columns = 128, 256
    v, u = np.mgrid[0:rows, 0:columns]
    high = 90 - (v + 0.5) / rows * 180
    turn = (u + 0.5) / columns * 360 - 180
    light = np.full((rows, columns), 0.30) + 0.25 * np.clip(high / 90, 0, 1)
    for at, up, wide, tall, strength in (
        (view.light_deg, 52.0, 36.0, 26.0, 8.5 * view.key),
        (view.light_deg + 150, 35.0, 30.0, 30.0, 1.7),
        (view.light_deg + 60, 78.0, 120.0, 9.0, 2.0),
    ):
        offset = (turn - at + 180) % 360 - 180
        edge_x = np.clip((wide - np.abs(offset)) / 5 + 0.5, 0, 1)
        edge_y = np.clip((tall - np.abs(high - up)) / 5 + 0.5, 0, 1)
        light = light + strength * edge_x * edge_y
    tint = np.array([1 + 0.05 * view.warmth, 1.0, 1 - 0.06 * view.warmth])
    pixels = np.ascontiguousarray((light[..., None] * tint).astype(np.float32))
    upright = mi.ScalarTransform4f().rotate([1, 0, 0], 90)
    return {"type": "envmap", "bitmap": mi.Bitmap(pixels), "to_world": upright}


def _scene(parts: list[Part], view: View, size_px: tuple[int, int], folder: Path) -> dict[str, Any]:
    aspect = size_px[0] / size_px[1]
    parts = [Part(part.mesh.turned("z", -view.side_deg), part.material) for part in parts]
    shown = [*parts, *_bar_for(parts, view, aspect)]
    points = np.concatenate([part.mesh.points for part in shown])
    camera = frame_camera(points, view, aspect)
    size = float(np.ptp(points, axis=0).max())
    middle = points.mean(axis=0)
    description: dict[str, Any] = {
        "type": "scene",
        "sky": sky(view),
        "sensor": {
            "type": "perspective",
            "fov": view.field_deg,
            "fov_axis": "larger",
            "to_world": mi.ScalarTransform4f().look_at(
                camera.place.tolist(), camera.target.tolist(), camera.up.tolist()
            ),
            "near_clip": 0.1,
            "far_clip": 1e5,
            "film": {
                "type": "hdrfilm",
                "width": size_px[0],
                "height": size_px[1],
                "rfilter": {"type": "box"},
                "pixel_format": "rgb",
            },
        },
    }
    for index, part in enumerate([*shown, _ground(view, size, middle)]):
        path = folder / f"{index}.ply"
        part.mesh.write_ply(path)
        kind = part.material["type"]
        whole = kind in {"dielectric", "thindielectric", "mask", "roughdielectric"}
        bsdf = part.material if whole else {"type": "twosided", "inner": part.material}
        description[f"part{index}"] = {"type": "ply", "filename": str(path), "bsdf": bsdf}
    return description


def photograph(parts: list[Part], view: View, *, long_px: int = 1600, samples: int = 48) -> Array:
    """Return the picture as screen colours between 0 and 1."""
    short = long_px * 3 // 4
    size_px = (short, long_px) if view.portrait else (long_px, short)
    with tempfile.TemporaryDirectory() as name:
        scene = mi.load_dict(_scene(parts, view, size_px, Path(name)))
    integrator = mi.load_dict(
        {
            "type": "aov",
            "aovs": "alb:albedo,nor:sh_normal",
            "image": {"type": "path", "max_depth": view.depth, "rr_depth": 4},
        }
    )
    layers = np.array(mi.render(scene, integrator=integrator, spp=samples, seed=view.seed))
    light, albedo, normal = (
        np.ascontiguousarray(layers[..., i : i + 3], dtype=np.float32) for i in (0, 3, 6)
    )
    light = np.minimum(np.nan_to_num(light), 12.0)
    clean = pyoidn.denoise(
        light, albedo=np.clip(np.nan_to_num(albedo), 0, 1), normal=np.nan_to_num(normal), hdr=True
    )
    return develop(np.asarray(clean, dtype=float), view)


def develop(light: Array, view: View) -> Array:
    """Return linear light as screen colours: exposed for the card, shoulder on the highlights."""
    border = np.concatenate(
        [light[:40].reshape(-1, 3), light[:, :40].reshape(-1, 3), light[:, -40:].reshape(-1, 3)]
    )
    wanted = colour((view.ground * 1.02,) * 3)["value"][0]
    exposed = light * (wanted / np.median(border[:, 1]))
    shoulder = np.where(exposed > 0.6, 0.6 + 0.4 * (1 - np.exp(-(exposed - 0.6) / 0.4)), exposed)
    screen = np.where(
        shoulder > 0.0031308,
        1.055 * np.maximum(shoulder, 1e-9) ** (1 / 2.4) - 0.055,
        shoulder * 12.92,
    )
    rng = np.random.default_rng(view.seed)
    sharp = screen + 0.35 * (screen - ndimage.gaussian_filter(screen, (1.2, 1.2, 0)))
    grain = ndimage.gaussian_filter(rng.normal(0, 0.010, screen.shape[:2]), 0.8)[..., None]
    return np.clip(sharp + grain, 0, 1)
