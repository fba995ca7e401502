"""Flat bodies cut from a sheet: any outline with holes, edges bevelled."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

import mapbox_earcut
import numpy as np
import shapely
from shapely.geometry import Polygon
from shapely.geometry.polygon import orient

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Array = NDArray[np.float64]
from meshes import Mesh, joined


def slab(outline: Polygon, height: float, bevel: float = 0.05) -> Mesh:
    """Return a flat body of the outline (holes allowed) standing on z = 0, edges bevelled.

    Texture coordinates span the outline's bounding box; the sides take the colour of the edge.
    """
    outline = orient(
        shapely.segmentize(outline, max_segment_length=max(outline.length / 400, 0.02))
    )
    low_x, low_y, high_x, high_y = outline.bounds
    origin, size = np.array([low_x, low_y]), np.array([high_x - low_x, high_y - low_y])
    rings = [np.array(ring.coords)[:-1] for ring in (outline.exterior, *outline.interiors)]
    inner = [_inset(ring, bevel) for ring in rings]
    sides: list[Mesh] = []
    for ring, top in zip(rings, inner, strict=True):
        levels = [(top, 0.0), (ring, bevel), (ring, height - bevel), (top, height)]
        for (low, low_z), (high, high_z) in pairwise(levels):
            sides.append(_wall(low, low_z, high, high_z, (origin, size)))
    flat = np.concatenate(inner)
    ends = np.cumsum([len(ring) for ring in inner]).astype(np.uint32)
    faces = mapbox_earcut.triangulate_float64(flat, ends).reshape(-1, 3).astype(np.int32)
    a, b, c = (flat[faces[:, i]] for i in range(3))
    clockwise = np.cross(np.c_[b - a, 0 * a[:, 0]], np.c_[c - a, 0 * a[:, 0]])[:, 2] < 0
    faces[clockwise] = faces[clockwise][:, ::-1]
    uvs = (flat - origin) / size
    for z, sign in ((height, 1.0), (0.0, -1.0)):
        points = np.column_stack([flat, np.full(len(flat), z)])
        normals = np.repeat([[0.0, 0.0, sign]], len(flat), axis=0)
        sides.append(Mesh(points, normals, uvs, faces if sign > 0 else faces[:, ::-1]))
    return joined(sides)


def _inset(ring: Array, distance: float) -> Array:
    before, after = ring - np.roll(ring, 1, axis=0), np.roll(ring, -1, axis=0) - ring
    normals = []
    for edge in (before, after):
        length = np.linalg.norm(edge, axis=1, keepdims=True) + 1e-12
        normals.append(np.column_stack([-edge[:, 1], edge[:, 0]]) / length)
    mean = normals[0] + normals[1]
    scale = 2 / np.maximum((mean**2).sum(axis=1, keepdims=True), 0.5)
    return ring + mean * scale * distance


def _wall(low: Array, low_z: float, high: Array, high_z: float, span: tuple[Array, Array]) -> Mesh:
    """Return flat-shaded quads between two rings of the same number of corners."""
    count = len(low)
    lower = np.column_stack([low, np.full(count, low_z)])
    upper = np.column_stack([high, np.full(count, high_z)])
    quads = np.stack([lower, np.roll(lower, -1, 0), np.roll(upper, -1, 0), upper], axis=1)
    flat = np.cross(quads[:, 1] - quads[:, 0], quads[:, 3] - quads[:, 0])
    flat /= np.linalg.norm(flat, axis=1, keepdims=True) + 1e-12
    start = np.arange(count)[:, None] * 4
    faces = np.concatenate([start + np.array([0, 1, 2]), start + np.array([0, 2, 3])]).astype(
        np.int32
    )
    points = quads.reshape(-1, 3)
    uvs = (points[:, :2] - span[0]) / span[1]
    return Mesh(points, np.repeat(flat, 4, axis=0), uvs, faces)


def box(x: float, y: float, z: float, bevel: float = 0.05) -> Mesh:
    """Return a bevelled block centred on the z axis, standing on z = 0."""
    return slab(shapely.box(-x / 2, -y / 2, x / 2, y / 2), z, bevel)
