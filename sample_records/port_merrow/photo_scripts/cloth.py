"""Garments laid flat: cut pieces with a soft edge, folds and a printed or woven face."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from materials import Material, coated, cut_out, matt
from meshes import Mesh, joined, lathe, relief
from PIL import Image, ImageDraw
from prints import distance_from_edge
from shapes import ball, curve
from studio import Part
from textures import blurred, clouds

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import NDArray

    Array = NDArray[np.float64]

MESH_STRIDE = 3


@dataclass(frozen=True, slots=True)
class Cut:
    """A cut piece on its own pixel grid; x and y are in centimetres, y up."""

    x: Array
    y: Array
    inside: Array
    away_cm: Array
    middle: tuple[float, float]
    size_cm: tuple[float, float]


def cut(outline: Sequence[tuple[float, float]], px_per_cm: float, *, smooth: bool = True) -> Cut:
    """Return the piece inside the outline; `smooth` rounds the outline between its points."""
    line = np.array(outline, dtype=float)
    if smooth:
        line = curve([*line.tolist(), line[0].tolist()], 40 * len(line))
    low, high = line.min(axis=0) - 0.8, line.max(axis=0) + 0.8
    columns, rows = (round(float(side) * px_per_cm) for side in (high - low))
    sheet = Image.new("L", (columns * 2, rows * 2), 0)
    pixels = (line - [low[0], high[1]]) * [1, -1] * 2 * px_per_cm
    ImageDraw.Draw(sheet).polygon([tuple(p) for p in pixels], fill=255)
    inside = np.asarray(sheet.resize((columns, rows), Image.Resampling.BOX), dtype=float) / 255
    x, y = np.meshgrid(np.linspace(low[0], high[0], columns), np.linspace(high[1], low[1], rows))
    middle = (float(low[0] + high[0]) / 2, float(low[1] + high[1]) / 2)
    away = distance_from_edge(inside > 0.5) / px_per_cm
    return Cut(x, y, inside, away, middle, (float(high[0] - low[0]), float(high[1] - low[1])))


def heights_of(
    piece: Cut, *, puff_cm: float, edge_cm: float, folds: Array, base_cm: float = 0.0
) -> Array:
    """Return the height of the piece: rounded at its edge, `folds` fading out toward it."""
    soft = 1 - np.exp(-piece.away_cm / edge_cm)
    wrinkle = 0.25 * puff_cm * (clouds(piece.x.shape, 40, int(abs(piece.middle[0] * 7)) + 3) - 0.5)
    fade = np.clip(piece.away_cm / edge_cm, 0, 1)
    return blurred(base_cm + 0.12 + puff_cm * soft + (folds + wrinkle) * fade, 1.5)


def sewn(
    piece: Cut, heights: Array, face: Array, *, gloss: float = 0.0, sheen: float = 0.0
) -> Part:
    """Return the piece as a part of the picture."""
    step = MESH_STRIDE
    mesh = relief(
        heights[::step, ::step], blurred(piece.inside, step)[::step, ::step], piece.size_cm
    )
    inner: Material = coated(face, gloss=gloss, sheen=sheen) if gloss or sheen else matt(face)
    placed = mesh.moved(*piece.middle)
    return Part(placed, cut_out(inner, piece.inside))


def beads(places: Array, radius: float, *, squash: float = 1.0) -> Mesh:
    """Return one small sphere for each place (x, y, z)."""
    profile = [*ball(radius)[::6], (0.0, radius)]
    bead = lathe(profile, 12).scaled(1, 1, squash)
    return joined([bead.moved(*place) for place in places])


def resting(piece: Cut, heights: Array, points: Array) -> Array:
    """Return the flat points lifted onto the piece; those outside it are left out."""
    rows, columns = heights.shape
    column = (points[:, 0] - piece.x[0, 0]) / piece.size_cm[0] * (columns - 1)
    row = (piece.y[0, 0] - points[:, 1]) / piece.size_cm[1] * (rows - 1)
    valid = (row > 1) & (column > 1) & (row < rows - 2) & (column < columns - 2)
    points, row, column = points[valid], row[valid].astype(int), column[valid].astype(int)
    on_cloth = piece.inside[row, column] > 0.98
    return np.column_stack([points, heights[row, column]])[on_cloth]


def mirrored(outline: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """Return the outline mirrored left to right."""
    return [(-x, y) for x, y in reversed(outline)]


def symmetric(right_side: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """Return a closed outline from its right half, given from top to bottom."""
    return [*right_side, *[(-x, y) for x, y in reversed(right_side)]]
