"""What stands beside a container: where to look next when pests were found in it."""

from __future__ import annotations

from dataclasses import dataclass

from service.errors import NotFoundError
from service.store.handles import Connection
from service.store.lists.walk import Stand, load_walk

BEYOND = 2
"""How many containers on either side of the shelf are named (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Neighbours:
    """What to look at next, in this order, each part as one walks.

    Attributes:
        together: Containers in the same outermost one, or the one they lie in.
        beside: Those at the same location; all of them.
        next: Those before and behind that location.
        is_located: Whether the store knows where the container is; if not, only what is together
            with it can be named.
    """

    together: tuple[Stand, ...]
    beside: tuple[Stand, ...]
    next: tuple[Stand, ...]
    is_located: bool


def neighbours(
    connection: Connection, container_number: str, *, beyond: int = BEYOND
) -> Neighbours:
    """Find the neighbours of a container.

    Raises:
        NotFoundError: When there is no such container.
    """
    walk = load_walk(connection)
    here = next((one for one in walk if one.container_number == container_number), None)
    if here is None:
        raise NotFoundError(container_number, what="container")
    together = tuple(
        one
        for one in walk
        if one.outermost == here.outermost and one.container_number != container_number
    )
    if not here.location:
        return Neighbours(together, (), (), is_located=False)
    # What lies in another box is looked at when that box is opened.
    outer = [one for one in walk if one.container_number == one.outermost]
    at = [index for index, one in enumerate(outer) if one.location == here.location]
    beside = tuple(outer[index] for index in at if outer[index].outermost != here.outermost)
    located = [one for one in outer if one.location]
    around = (
        *located[max(0, at[0] - beyond) : at[0]],
        *located[at[-1] + 1 : at[-1] + 1 + beyond],
    )
    return Neighbours(together, beside, around, is_located=True)
