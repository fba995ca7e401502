"""The swap list: with which one walks the store and puts new cards in the place of old ones.

It is carried about and left lying, so it says only what may stand outside.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from service.cards.changes.change import Urgency
from service.cards.words import join_words
from service.printed import to_print
from service.records.naturally import natural_key

URGENCY_WORDS = {
    Urgency.HAZARD_OR_LIFT: to_print("First: hazard or lift"),
    Urgency.CONTENTS: to_print("Contents"),
    Urgency.WORDING: to_print("Wording"),
}
TAKE_OFF = to_print("none: take it off")
LEAVE_ON = to_print("none yet: leave the old one on")
NOT_PACKED = to_print("packed nowhere")
"""Where an object is to be looked for that lies in no container."""


@dataclass(frozen=True, slots=True)
class SwapRow:
    """One card to replace.

    `location` is the path to its container, outermost first, empty where it is hidden or unknown.
    `old` and `new` are revision and letters as they are printed. A tag names its object, and the
    container in which that lies, which may be none.
    """

    container_number: str
    location: tuple[str, ...]
    card: str
    where: str
    old: str
    new: str
    urgency: Urgency
    reasons: tuple[str, ...]
    object_number: str = ""


@dataclass(frozen=True, slots=True)
class SwapList:
    """The whole list: whose, made when and by whom, and its rows as one walks.

    `hides_locations` says that the museum does not print where containers are.
    """

    museum: str
    made: str
    rows: tuple[SwapRow, ...]
    hides_locations: bool = False


def order_rows(rows: Iterable[SwapRow]) -> tuple[SwapRow, ...]:
    """Order rows as one walks: by location, then container, the most urgent card of it first.

    Containers whose location is not told come last, and then the tags of what is packed nowhere.
    """
    return tuple(sorted(rows, key=_walk))


def name_version(revision: int | None, letters: str) -> str:
    """Write revision and letters as a card prints them: r3 KMTF; a tag is of no revision."""
    return (
        letters
        if revision is None
        else join_words((to_print("r{revision}", revision=revision), letters), between=" ")
    )


def _walk(row: SwapRow) -> tuple[object, ...]:
    return (
        not row.container_number,
        not row.location,
        [natural_key(part) for part in row.location],
        natural_key(row.container_number),
        row.urgency,
        row.card,
        natural_key(row.object_number),
    )
