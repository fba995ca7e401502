"""The cards of a run in the order in which one walks the store to put them on."""

from __future__ import annotations

from dataclasses import dataclass

from service.keeping.tags.whereabouts import Whereabouts, locate_containers, locate_objects
from service.records.naturally import natural_key
from service.store.handles import Connection
from service.store.printed.card import PrintedCard
from service.store.printed.runs import (
    load_attached,
    load_attached_tags,
    load_run,
    load_run_record,
)
from service.store.tables import CardState


@dataclass(frozen=True, slots=True)
class ToAttach:
    """A card to put on, and the one that comes off its place, if any."""

    card: PrintedCard
    comes_off: PrintedCard | None


@dataclass(frozen=True, slots=True)
class Stop:
    """A place where one stops: a container, or an object that lies in none.

    `location` is outermost first. `done` counts the cards of the run that are on already.
    """

    container_number: str
    object_number: str
    location: tuple[str, ...]
    cards: tuple[ToAttach, ...]
    done: int


def plan_walk(connection: Connection, run_id: int) -> tuple[Stop, ...]:
    """Plan where to go with the cards of a run; stops where nothing is left to do come last.

    Of several copies of a card one is put on, and the others are spare.

    Raises:
        NotFoundError: When there is no such run.
    """
    load_run_record(connection, run_id)
    cards = _first_copies(load_run(connection, run_id))
    where = _locate(connection, cards)
    beside = _load_beside(connection, cards)
    stops: dict[tuple[str, str], list[PrintedCard]] = {}
    for card in cards:
        here = where.get(card.made.number, Whereabouts())
        alone = "" if here.container_number else card.made.object_number
        stops.setdefault((here.container_number, alone), []).append(card)
    planned = [
        Stop(
            container_number,
            object_number,
            where.get(some[0].made.number, Whereabouts()).location,
            tuple(
                ToAttach(card, beside.get(card.made.key))
                for card in some
                if card.state is CardState.MADE
            ),
            sum(card.state is CardState.ATTACHED for card in some),
        )
        for (container_number, object_number), some in stops.items()
    ]
    return tuple(sorted(planned, key=_as_one_walks))


def _first_copies(cards: tuple[PrintedCard, ...]) -> list[PrintedCard]:
    """Give one copy of each card: the one that is on, else the first that waits."""
    chosen: dict[tuple[str, str, int], PrintedCard] = {}
    for card in cards:
        if card.state not in {CardState.MADE, CardState.ATTACHED}:
            continue
        if card.made.key not in chosen or card.state is CardState.ATTACHED:
            chosen[card.made.key] = card
    return list(chosen.values())


def _locate(connection: Connection, cards: list[PrintedCard]) -> dict[str, Whereabouts]:
    boxes = list(dict.fromkeys(c.made.container_number for c in cards if c.made.container_number))
    tagged = list(dict.fromkeys(c.made.object_number for c in cards if c.made.object_number))
    return locate_objects(connection, tagged) | locate_containers(connection, boxes)


def _load_beside(
    connection: Connection, cards: list[PrintedCard]
) -> dict[tuple[str, str, int], PrintedCard]:
    boxes = sorted({card.made.container_number for card in cards} - {""})
    tagged = sorted({card.made.object_number for card in cards} - {""})
    on = (*load_attached(connection, boxes), *load_attached_tags(connection, tagged))
    return {card.made.key: card for card in on}


def _as_one_walks(stop: Stop) -> tuple[object, ...]:
    return (
        not stop.cards,
        not stop.container_number,
        not stop.location,
        [natural_key(part) for part in stop.location],
        natural_key(stop.container_number or stop.object_number),
    )
