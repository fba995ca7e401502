"""How a container is held, as far as its record tells: how high, how far away, how well.

What is not recorded counts as the worse: a box of unknown size is one that is held at arm's length.
"""

from __future__ import annotations

from service.handling.lifting.hse import Reach
from service.handling.lifting.niosh import Grip
from service.records.record import ContainerKind, ContainerRecord

CLOSE_DEPTH_MM = 400.0
"""The deepest container that is held close to the body (common practice, no source)."""

POOR_LENGTH_MM = 400.0
POOR_HEIGHT_MM = 300.0
"""A box longer or higher than this is gripped poorly (NIOSH 94-110, pp. 17 and 18)."""

_UNUSUAL_DEPTH_MM = 860.0
"""Where no size is recorded: the depth that reaches as far as the NIOSH equation does."""

_HEIGHT = "height"


def measure_depth_mm(container: ContainerRecord) -> float | None:
    """Give how deep a container is as it comes off its shelf, end first; None if not recorded.

    That is its longest side lying down. A garment cover hangs, and is no deeper than is held close.
    """
    if container.kind is ContainerKind.GARMENT_COVER:
        return CLOSE_DEPTH_MM
    if container.lid_size is not None:
        return max(container.lid_size.width_mm, container.lid_size.height_mm)
    sides = [each.length_mm for each in container.inner_dimensions if each.label != _HEIGHT]
    return max(sides, default=None)


def find_reach(container: ContainerRecord) -> Reach:
    """Say whether a container is held close to the body."""
    depth_mm = measure_depth_mm(container)
    return Reach.CLOSE if depth_mm is not None and depth_mm <= CLOSE_DEPTH_MM else Reach.ARMS_OUT


def deepest_mm(container: ContainerRecord) -> float:
    """Give the depth to reckon with: one that is not recorded counts as deep."""
    depth_mm = measure_depth_mm(container)
    return _UNUSUAL_DEPTH_MM if depth_mm is None else depth_mm


def find_grip(container: ContainerRecord) -> Grip:
    """Say how well a container can be held: fair if small, else poor; no handles are recorded."""
    depth_mm, end = measure_depth_mm(container), container.end_size
    if depth_mm is None or end is None or container.kind is ContainerKind.GARMENT_COVER:
        return Grip.POOR
    small = max(depth_mm, end.width_mm) <= POOR_LENGTH_MM and end.height_mm <= POOR_HEIGHT_MM
    return Grip.FAIR if small else Grip.POOR
