"""Cards to swap as one meets them: those of a container together."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from service.keeping.reprints import OutOfDate

Stop = tuple[str, str]
"""A container with an empty object number; or no container, and an object that lies in none."""


def group_stops(wrong: Iterable[OutOfDate]) -> Mapping[Stop, Sequence[OutOfDate]]:
    """Put together what one meets at each stop, in the order of the list."""
    stops: dict[Stop, list[OutOfDate]] = {}
    for one in wrong:
        reprint = one.reprint
        alone = "" if reprint.container_number else reprint.object_number
        stops.setdefault((reprint.container_number, alone), []).append(one)
    return stops
