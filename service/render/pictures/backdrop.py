"""The background of a photo: a smooth surface fitted to the picture's border.

Each colour is a polynomial of the second degree in x and y, by least squares over the pixels near
the border, leaving out again and again those that do not lie on it (an object that reaches the
border, a scale bar).
"""

from __future__ import annotations

from dataclasses import dataclass
from operator import mul
from statistics import median

from PIL import Image

Colour = tuple[float, ...]
Terms = tuple[float, ...]

# The border counts as plain when this share of it lies on the surface.
_LEAST_PLAIN_RATIO = 0.6
# Distance in levels (0 to 255) up to which a border pixel takes part, round after round.
_ROUNDS_LEVELS = (45.0, 28.0, 18.0, 12.0)
# Every so many pixels of the border are looked at.
_STEP_PX = 4
# The surface is computed on this many points a side; Pillow bends it smoothly between them.
_GRID = 16


@dataclass(frozen=True, slots=True)
class Backdrop:
    """The background alone, as large as the picture, and how far its border strays from it."""

    surface: Image.Image
    noise_levels: float


@dataclass(frozen=True, slots=True)
class _Sample:
    terms: Terms
    colour: Colour


def fit_backdrop(image: Image.Image) -> Backdrop | None:
    """Fit the background of a small RGB picture; None when its border is not plain."""
    samples = _border_samples(image)
    centre = tuple(median(sample.colour[band] for sample in samples) for band in range(3))
    model: tuple[Terms, ...] = tuple((level, 0.0, 0.0, 0.0, 0.0, 0.0) for level in centre)
    near = samples
    for limit in _ROUNDS_LEVELS:
        near = [sample for sample in samples if _distance(model, sample) <= limit]
        if len(near) < _LEAST_PLAIN_RATIO * len(samples):
            return None
        model = _fitted(near)
    noise_levels = median(_distance(model, sample) for sample in near)
    return Backdrop(_surface(model, image.size), noise_levels)


def _border_samples(image: Image.Image) -> list[_Sample]:
    width, height = image.size
    inset = max(2, max(image.size) // 50)
    lines = (1, inset, -1 - inset, -2)
    along_x = {line % width for line in lines}
    along_y = {line % height for line in lines}
    places = [(x, y) for y in sorted(along_y) for x in range(0, width, _STEP_PX)]
    places += [(x, y) for x in sorted(along_x) for y in range(0, height, _STEP_PX)]
    return [_sample(image, x, y) for x, y in places]


def _sample(image: Image.Image, x: int, y: int) -> _Sample:
    colour = image.getpixel((x, y))
    if not isinstance(colour, tuple):
        message = "An RGB picture is needed."
        raise TypeError(message)
    return _Sample(_terms((x + 0.5) / image.width, (y + 0.5) / image.height), colour)


def _terms(x_ratio: float, y_ratio: float) -> Terms:
    """Give the terms of the polynomial at a point; both ratios run from 0 to 1."""
    x, y = 2 * x_ratio - 1, 2 * y_ratio - 1
    return (1.0, x, y, x * x, x * y, y * y)


def _value(factors: Terms, terms: Terms) -> float:
    # Written out, because this is done for every sample in every round.
    _, x, y, xx, xy, yy = terms
    level, by_x, by_y, by_xx, by_xy, by_yy = factors
    return level + by_x * x + by_y * y + by_xx * xx + by_xy * xy + by_yy * yy


def _distance(model: tuple[Terms, ...], sample: _Sample) -> float:
    red, green, blue = model
    return max(
        abs(_value(red, sample.terms) - sample.colour[0]),
        abs(_value(green, sample.terms) - sample.colour[1]),
        abs(_value(blue, sample.terms) - sample.colour[2]),
    )


def _fitted(samples: list[_Sample]) -> tuple[Terms, ...]:
    """Solve the normal equations of the least squares for the three colours at once."""
    columns = tuple(zip(*(sample.terms + sample.colour for sample in samples), strict=True))
    table = [
        [sum(map(mul, column, other)) for other in columns]
        for column in columns[: len(samples[0].terms)]
    ]
    return _solved(table)


def _solved(table: list[list[float]]) -> tuple[Terms, ...]:
    """Solve linear equations by elimination; a direction the samples do not tell stays flat."""
    size = len(table)
    for step in range(size):
        table[step][step] += 1e-6
        for row in range(size):
            if row != step:
                factor = table[row][step] / table[step][step]
                table[row] = [a - factor * b for a, b in zip(table[row], table[step], strict=True)]
    return tuple(
        tuple(row[column] / row[step] for step, row in enumerate(table))
        for column in range(size, len(table[0]))
    )


def _surface(model: tuple[Terms, ...], size: tuple[int, int]) -> Image.Image:
    places = [(index + 0.5) / _GRID for index in range(_GRID)]
    points = [_terms(x, y) for y in places for x in places]
    levels = bytes(
        min(255, max(0, round(_value(factors, terms)))) for terms in points for factors in model
    )
    grid = Image.frombytes("RGB", (_GRID, _GRID), levels)
    return grid.resize(size, Image.Resampling.BICUBIC)
