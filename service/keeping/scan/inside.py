"""What lies in a scanned container and where it belongs, for those who may see it on a phone.

What is discreet or restricted is never named there, whoever looks: a screen is seen by others, too.
"""

from __future__ import annotations

from dataclasses import dataclass

from service.cards.compose.objects import name_object
from service.cards.compose.warn import is_discreet
from service.cards.words import join_words
from service.contents.packing import Packing
from service.keeping.rounds.loading import load_container_of, load_packings
from service.records.record import Museum
from service.store.handles import Connection


@dataclass(frozen=True, slots=True)
class Inside:
    """What lies in a container, and where it belongs; `others` are objects not to be spoken of."""

    location: str = ""
    contents: tuple[tuple[str, str], ...] = ()
    others: int = 0


NOTHING_INSIDE = Inside()


def open_inside(packing: Packing, museum: Museum) -> Inside:
    """Tell what the museum opens to everybody who scans a card: nothing without its word."""
    return _tell(packing, contents=museum.scan_shows_contents, location=museum.scan_shows_location)


def see_inside(connection: Connection, container_number: str) -> Inside:
    """Tell contents and location to somebody of the house.

    Raises:
        NotFoundError: When there is no such container.
    """
    loaded = load_packings(connection, [container_number])
    return _tell(load_container_of(loaded, container_number), contents=True, location=True)


def _tell(packing: Packing, *, contents: bool, location: bool) -> Inside:
    everything = packing.everything if contents else ()
    named = [one for one in everything if not is_discreet(one)]
    return Inside(
        join_words(packing.container.location, between=" / ") if location else "",
        tuple((one.record.object_number, name_object(one)) for one in named),
        len(everything) - len(named),
    )
