"""Cards that can be ticked for printing, stop by stop: what is wrong, lacking or lost."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from service.cards.changes.change import Urgency
from service.cards.fingerprint import check_letters
from service.cards.kinds import find_kind
from service.cards.swap_list import name_version
from service.keeping.reprints import OutOfDate
from service.keeping.stops import group_stops
from service.keeping.tags.whereabouts import Whereabouts, locate_containers
from service.languages.saying import said
from service.store.handles import Connection
from service.store.printed.card import MadeCard, PrintedCard
from service.store.today.note import Unattached

CARD, LACKING = "card", "lacking"
"""The fields that ticks are sent in: a printed card by its number, and one never printed."""


@dataclass(frozen=True, slots=True)
class Tick:
    """A card: the field and value of its tick, none where it only comes off; and why it is here."""

    name: str
    side: int
    field: str
    value: str
    ticked: bool = True
    old: str = ""
    reasons: tuple[str, ...] = ()
    urgency: Urgency | None = None
    is_made: bool = False


@dataclass(frozen=True, slots=True)
class Stop:
    """A container, or an object that lies in none, with its cards."""

    container_number: str
    object_number: str
    location: str
    ticks: tuple[Tick, ...]

    @property
    def urgency(self) -> Urgency | None:
        """The urgency of the most urgent card; none where nothing is wrong."""
        return min((one.urgency for one in self.ticks if one.urgency is not None), default=None)

    @property
    def reasons(self) -> tuple[str, ...]:
        """The reasons that all of several cards share; none where they differ."""
        several = {one.reasons for one in self.ticks} if len(self.ticks) > 1 else set()
        return next(iter(several)) if len(several) == 1 else ()


def offer_wrong(wrong: Sequence[OutOfDate]) -> tuple[Stop, ...]:
    """Offer the cards of the reprint list, in its order."""
    return tuple(
        Stop(container, number, " / ".join(some[0].reprint.location), tuple(map(_wrong, some)))
        for (container, number), some in group_stops(wrong).items()
    )


def offer_lacking(connection: Connection, lacking: Sequence[Unattached]) -> tuple[Stop, ...]:
    """Offer what containers lack; what was printed and only waits is not ticked."""
    stops: dict[str, list[Unattached]] = {}
    for one in lacking:
        stops.setdefault(one.container_number, []).append(one)
    where = locate_containers(connection, list(stops))
    return tuple(
        Stop(
            number,
            "",
            " / ".join(where.get(number, Whereabouts()).location),
            tuple(map(_lacking, some)),
        )
        for number, some in stops.items()
    )


def offer_printed(
    connection: Connection, cards: Iterable[PrintedCard], *, ticked: bool
) -> tuple[Stop, ...]:
    """Offer printed cards again, for those that were lost or torn."""
    stops: dict[tuple[str, str], list[PrintedCard]] = {}
    for card in cards:
        made = card.made
        stops.setdefault((made.container_number, made.object_number), []).append(card)
    where = locate_containers(connection, [number for number, _ in stops if number])
    return tuple(
        Stop(
            container,
            number,
            " / ".join(where.get(container, Whereabouts()).location),
            tuple(_printed(card, ticked=ticked) for card in some),
        )
        for (container, number), some in stops.items()
    )


def name_old(made: MadeCard) -> str:
    """Write revision and letters as they stand on a card."""
    letters = check_letters(made.fingerprint)
    return name_version(None if made.object_number else made.revision, letters)


def read_lacking(value: str) -> tuple[str, str, int] | None:
    """Read the value of a tick for what was never printed: number, kind and side."""
    kind, _, rest = value.partition(":")
    side, _, number = rest.partition(":")
    is_side = side.isascii() and side.isdigit() and len(side) < _DIGITS
    return (number, kind, int(side)) if kind and number and is_side else None


_DIGITS = 4


def _wrong(one: OutOfDate) -> Tick:
    made = one.printed.made
    return Tick(
        said(find_kind(made.kind).name),
        made.side,
        CARD if one.today is not None else "",
        str(one.printed.card_id),
        old=name_old(made),
        reasons=tuple(dict.fromkeys(change.words for change in one.reprint.changes)),
        urgency=one.reprint.urgency,
    )


def _lacking(one: Unattached) -> Tick:
    return Tick(
        said(find_kind(one.kind).name),
        one.side,
        LACKING,
        f"{one.kind}:{one.side}:{one.container_number}",
        ticked=not one.is_made,
        is_made=one.is_made,
    )


def _printed(card: PrintedCard, *, ticked: bool) -> Tick:
    made = card.made
    return Tick(
        said(find_kind(made.kind).name), made.side, CARD, str(card.card_id), ticked, name_old(made)
    )
