"""Which objects of a large container its page shows at once, so that no page grows without end."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from service.web.views.containers.asked import Asked
from service.web.views.containers.contents import ShownLayer

MOST_SHOWN = 60
"""So many make a page of less than 90 KB, which a phone in the store loads quickly."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """Up to sixty of the objects, layer by layer.

    Attributes:
        layers: The layers that have objects in it, each with those alone.
        is_layered: Whether the container has more than one layer.
        first: Which object it begins with, counted from 1.
        total: How many objects lie in the container.
    """

    layers: tuple[ShownLayer, ...]
    is_layered: bool
    first: int
    total: int

    @property
    def last(self) -> int:
        """Which object it ends with."""
        return min(self.first + MOST_SHOWN - 1, self.total)

    @property
    def earlier(self) -> int:
        """Where the stretch before it begins; 0 where this is the first."""
        return max(self.first - MOST_SHOWN, 0)

    @property
    def later(self) -> int:
        """Where the stretch after it begins; 0 where this is the last."""
        return self.last + 1 if self.last < self.total else 0


def cut_stretch(layers: Sequence[ShownLayer], asked: Asked) -> Stretch:
    """Cut out the stretch that is asked for; what is open, or has the keyboard, is in it."""
    keys = [shown.key for layer in layers for shown in layer.objects]
    wanted = next((key for key in (asked.open, asked.focus.rpartition("-")[2]) if key in keys), "")
    at = keys.index(wanted) if wanted else min(asked.begin, max(len(keys), 1)) - 1
    start = at - at % MOST_SHOWN
    cut = []
    passed = 0
    for layer in layers:
        objects = layer.objects[max(start - passed, 0) : max(start + MOST_SHOWN - passed, 0)]
        cut += [replace(layer, objects=objects)] if objects else []
        passed += len(layer.objects)
    return Stretch(tuple(cut), len(layers) > 1, start + 1, len(keys))
