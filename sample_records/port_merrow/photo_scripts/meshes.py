"""Build meshes by code: lathes, bevelled slabs, swept tubes and cloth.

One unit is one centimetre; z points up, the ground is z = 0, the camera looks along +y.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from collections.abc import Sequence
    from pathlib import Path

    from numpy.typing import NDArray

    Array = NDArray[np.float64]

SHARP_TURN_DEG = 32.0


@dataclass(frozen=True, slots=True)
class Mesh:
    """Triangles with a normal and a texture coordinate at every corner."""

    points: Array
    normals: Array
    uvs: Array
    faces: NDArray[np.int32]

    def moved(self, x: float = 0.0, y: float = 0.0, z: float = 0.0) -> Mesh:
        """Return the mesh shifted."""
        return replace(self, points=self.points + np.array([x, y, z]))

    def turned(self, axis: str, degrees: float) -> Mesh:
        """Return the mesh turned about the x, y or z axis through the origin."""
        first, second = {"x": (1, 2), "y": (2, 0), "z": (0, 1)}[axis]
        cosine, sine = np.cos(np.radians(degrees)), np.sin(np.radians(degrees))
        matrix = np.eye(3)
        matrix[first, first] = matrix[second, second] = cosine
        matrix[first, second], matrix[second, first] = -sine, sine
        return replace(self, points=self.points @ matrix.T, normals=self.normals @ matrix.T)

    def scaled(self, x: float, y: float, z: float) -> Mesh:
        """Return the mesh stretched along each axis."""
        factors = np.array([x, y, z])
        normals = self.normals / factors
        normals /= np.linalg.norm(normals, axis=1, keepdims=True) + 1e-12
        return replace(self, points=self.points * factors, normals=normals)

    def write_ply(self, path: Path) -> None:
        """Write the mesh as binary PLY."""
        corner = [(name, "<f4") for name in ("x", "y", "z", "nx", "ny", "nz", "u", "v")]
        corners = np.empty(len(self.points), dtype=corner)
        for index, (name, _) in enumerate(corner):
            block = (self.points, self.normals, self.uvs)[min(index // 3, 2)]
            corners[name] = block[:, index % 3 if index < 6 else index - 6]
        faces = np.empty(len(self.faces), dtype=[("n", "u1"), ("i", "<i4", (3,))])
        faces["n"], faces["i"] = 3, self.faces
        head = ["ply", "format binary_little_endian 1.0", f"element vertex {len(corners)}"]
        head += [f"property float {name}" for name, _ in corner]
        head += [f"element face {len(faces)}", "property list uchar int vertex_indices"]
        text = "\n".join([*head, "end_header", ""])
        path.write_bytes(text.encode("ascii") + corners.tobytes() + faces.tobytes())


def joined(meshes: Sequence[Mesh]) -> Mesh:
    """Return one mesh that holds all the given ones."""
    starts = np.cumsum([0, *[len(mesh.points) for mesh in meshes]])
    return Mesh(
        np.concatenate([mesh.points for mesh in meshes]),
        np.concatenate([mesh.normals for mesh in meshes]),
        np.concatenate([mesh.uvs for mesh in meshes]),
        np.concatenate([m.faces + s for m, s in zip(meshes, starts, strict=False)]).astype(
            np.int32
        ),
    )


def surface(
    points: Array, uvs: Array | None = None, around: tuple[bool, bool] = (False, False)
) -> Mesh:
    """Return a smooth surface through a grid of points, shape (rows, columns, 3).

    `around` says for rows and columns whether the last line of points repeats the first.
    """
    slopes = [_slope(points, axis, closed=around[axis]) for axis in (0, 1)]
    normals = np.cross(slopes[1], slopes[0])
    normals /= np.linalg.norm(normals, axis=2, keepdims=True) + 1e-12
    rows, columns = points.shape[:2]
    if uvs is None:
        v, u = np.meshgrid(np.linspace(0, 1, rows), np.linspace(0, 1, columns), indexing="ij")
        uvs = np.stack([u, v], axis=2)
    index = np.arange(rows * columns).reshape(rows, columns)
    a, b, c, d = index[:-1, :-1], index[:-1, 1:], index[1:, 1:], index[1:, :-1]
    faces = np.concatenate(
        [np.stack([a, c, d], axis=-1).reshape(-1, 3), np.stack([a, b, c], axis=-1).reshape(-1, 3)]
    )
    return Mesh(
        points.reshape(-1, 3), normals.reshape(-1, 3), uvs.reshape(-1, 2), faces.astype(np.int32)
    )


def _slope(points: Array, axis: int, *, closed: bool) -> Array:
    if not closed:
        return np.gradient(points, axis=axis)
    ring = np.take(points, range(points.shape[axis] - 1), axis=axis)
    slope = np.roll(ring, -1, axis=axis) - np.roll(ring, 1, axis=axis)
    first = np.take(slope, [0], axis=axis)
    return np.concatenate([slope, first], axis=axis)


def lathe(profile: Sequence[tuple[float, float]], segments: int = 128) -> Mesh:
    """Return a turned body from (radius, height) pairs, going up the outside.

    Corners sharper than about 30 degrees stay sharp; v runs along the profile, u around.
    """
    line = np.array(profile, dtype=float)
    lengths = np.concatenate([[0], np.cumsum(np.linalg.norm(np.diff(line, axis=0), axis=1))])
    angles = np.linspace(0, 2 * np.pi, segments + 1)
    runs: list[Mesh] = []
    for start, stop in _smooth_runs(line):
        part, v = line[start : stop + 1], lengths[start : stop + 1] / lengths[-1]
        x = part[:, :1] * np.cos(angles)
        y = part[:, :1] * np.sin(angles)
        z = np.repeat(part[:, 1:], segments + 1, axis=1)
        u, vv = np.meshgrid(angles / (2 * np.pi), v)
        grid = surface(np.stack([x, y, z], axis=2), np.stack([u, vv], axis=2), (False, True))
        runs.append(_fill_poles(grid, part, segments))
    return joined(runs)


def _smooth_runs(line: Array) -> list[tuple[int, int]]:
    steps = np.diff(line, axis=0)
    headings = np.degrees(np.arctan2(steps[:, 1], steps[:, 0]))
    turns = np.abs((np.diff(headings) + 180) % 360 - 180)
    cuts = [0, *(np.flatnonzero(turns > SHARP_TURN_DEG) + 1).tolist(), len(line) - 1]
    return list(pairwise(cuts))


def _fill_poles(grid: Mesh, part: Array, segments: int) -> Mesh:
    """Give corners on the axis, where the slope around is nil, the normal of their neighbours."""
    normals = grid.normals.reshape(len(part), segments + 1, 3).copy()
    for pole, neighbour in ((0, 1), (-1, -2)):
        if part[pole, 0] < 1e-6:
            mean = normals[neighbour].mean(axis=0)
            normals[pole] = mean / (np.linalg.norm(mean) + 1e-12)
    return replace(grid, normals=normals.reshape(-1, 3))


def rounded(
    profile: Sequence[tuple[float, float]], steps: int = 8, reach: float = 0.35
) -> list[tuple[float, float]]:
    """Return the profile with every inner corner drawn as a soft curve."""
    points = np.array(profile, dtype=float)
    line = [tuple(points[0])]
    for before, corner, after in zip(points[:-2], points[1:-1], points[2:], strict=True):
        start, stop = corner + (before - corner) * reach, corner + (after - corner) * reach
        for t in np.linspace(0, 1, steps):
            point = (1 - t) ** 2 * start + 2 * t * (1 - t) * corner + t**2 * stop
            line.append((float(point[0]), float(point[1])))
    return [*[(float(x), float(y)) for x, y in line], (float(points[-1][0]), float(points[-1][1]))]


def tube(path: Array, radius: float | Array, segments: int = 24, *, lay: float = 0.0) -> Mesh:
    """Return a round rod or rope along a path of points; u runs along, v around.

    `lay` twists the section, in turns per unit of length, for rope textures.
    """
    path = np.asarray(path, dtype=float)
    tangents = np.gradient(path, axis=0)
    tangents /= np.linalg.norm(tangents, axis=1, keepdims=True) + 1e-12
    side = np.cross(tangents[0], [0.31, 0.17, 0.93])
    frames = []
    for tangent in tangents:
        side = side - tangent * np.dot(side, tangent)
        side /= np.linalg.norm(side) + 1e-12
        frames.append((side, np.cross(tangent, side)))
    lengths = np.concatenate([[0], np.cumsum(np.linalg.norm(np.diff(path, axis=0), axis=1))])
    angles = np.linspace(0, 2 * np.pi, segments + 1)
    radii = np.broadcast_to(np.asarray(radius, dtype=float), len(path))
    first, second = (np.array([frame[i] for frame in frames]) for i in (0, 1))
    ring = (
        np.cos(angles)[None, :, None] * first[:, None]
        + np.sin(angles)[None, :, None] * second[:, None]
    )
    points = path[:, None] + ring * radii[:, None, None]
    u = np.repeat(lengths[:, None], segments + 1, axis=1)
    v = angles[None] / (2 * np.pi) + lay * u
    return joined(
        [surface(points, np.stack([u, v], axis=2), (False, True)), *_caps(path, points, tangents)]
    )


def _caps(path: Array, points: Array, tangents: Array) -> list[Mesh]:
    caps = []
    for end, sign in ((0, -1.0), (-1, 1.0)):
        ring = points[end, :-1]
        corners = np.concatenate([path[end][None], ring])
        count = len(ring)
        order = np.arange(count)
        faces = np.stack([np.zeros(count, int), order + 1, (order + 1) % count + 1], axis=1)
        faces = faces if sign > 0 else faces[:, ::-1]
        normals = np.repeat(sign * tangents[end][None], count + 1, axis=0)
        caps.append(Mesh(corners, normals, np.zeros((count + 1, 2)), faces.astype(np.int32)))
    return caps


def relief(heights: Array, opacity: Array, size: tuple[float, float]) -> Mesh:
    """Return a height field over a picture grid, without the cells that are wholly clear.

    `heights` and `opacity` have the same shape, first row at the top (far side).
    """
    rows, columns = heights.shape
    x = np.linspace(-size[0] / 2, size[0] / 2, columns)
    y = np.linspace(size[1] / 2, -size[1] / 2, rows)
    points = np.stack([*np.meshgrid(x, y), heights], axis=2)
    u, v = np.meshgrid(np.linspace(0, 1, columns), np.linspace(1, 0, rows))
    mesh = surface(points, np.stack([u, v], axis=2))
    kept = opacity.reshape(-1)[mesh.faces].max(axis=1) > 0
    return replace(mesh, faces=mesh.faces[kept][:, ::-1], normals=-mesh.normals)
