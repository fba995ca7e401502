"""Finding things: which box is it in, what lies in a box, what happened to it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Annotated

import typer

from service.cards.words import count, write_date
from service.cli.at_desk import Json, answer, at_desk, now
from service.cli.report import finding_as_data, write_finding
from service.cli.store.truth import name_card
from service.errors import NotFoundError
from service.keeping.checks.packings import check_container
from service.keeping.reprints import ReprintList, list_reprints_of, list_reprints_of_object
from service.pages.ruler import Ruler
from service.records.record import PlaceRecord
from service.store.handles import Connection
from service.store.history import Event, load_history
from service.store.kept.outs import load_outs
from service.store.lists.search import ContainerHit, ObjectHit, search
from service.store.load_records import load_container, load_object
from service.store.open import reading
from service.store.packing.load import load_holders, load_packing
from service.store.packing.stays import load_object_history
from service.store.printed.card import MadeCard, PrintedCard
from service.store.printed.runs import load_attached, load_attached_tags

app = typer.Typer()


@dataclass(frozen=True, slots=True)
class JudgedCard:
    """A card that is on its container, and what of it is no longer true."""

    card_id: int
    made: MadeCard
    changes: tuple[str, ...]


Number = Annotated[str, typer.Argument(help="The number of a container or an object.")]


@app.command("find")
def find(
    context: typer.Context,
    words: Annotated[list[str], typer.Argument(help="A number, title, material, hazard, place.")],
    as_json: Json = False,
) -> None:
    """Say which box it is in; the beginnings of words are enough."""
    with at_desk(context).store() as engine, reading(engine) as connection:
        found = search(connection, " ".join(words))
    data = {
        "objects": [_object_data(hit) for hit in found.objects],
        "containers": [
            {"container_number": hit.container_number, "title": hit.title, "location": hit.location}
            for hit in found.containers
        ],
        "more": found.more,
    }
    lines = [*map(_object_line, found.objects), *map(_container_line, found.containers)]
    lines += ["There is more; add a word."] if found.more else []
    answer(data, lines or ["Nothing was found."], as_json=as_json)


@app.command("show")
def show(context: typer.Context, number: Number, as_json: Json = False) -> None:
    """Show what lies in a container, or where an object lies."""
    with at_desk(context).desk() as desk, reading(desk.engine) as connection:
        try:
            data, lines = _show_container(connection, number)
            noticed = check_container(connection, number, today=now().date())
            attached = _judge_attached(connection, desk.workshop.ruler, number)
            data["attached"] = list(map(_card_data, attached))
            data["findings"] = list(map(finding_as_data, noticed))
            lines += [f"  {write_finding(one)}" for one in noticed]
            lines += [*map(_card_line, attached), f"{count(len(attached), 'card')} attached."]
        except NotFoundError:
            data, lines = _show_object_or_nothing(connection, number)
            tags = _judge_tags(connection, desk.workshop.ruler, number)
            data["attached"] = list(map(_card_data, tags))
            lines += map(_card_line, tags)
    answer(data, lines, as_json=as_json)


@app.command("history")
def history(context: typer.Context, number: Number, as_json: Json = False) -> None:
    """Say who changed what and when, the oldest first."""
    with at_desk(context).store() as engine, reading(engine) as connection:
        events = load_history(connection, container_number=number)
        events += load_object_history(connection, number)
    if not events:
        raise NotFoundError(number, what="history of")
    events = tuple(sorted(events, key=lambda event: event.change))
    data = {"events": [_event_data(event) for event in events]}
    answer(data, list(map(_event_line, events)), as_json=as_json)


def _object_data(hit: ObjectHit) -> dict[str, object]:
    return {
        "object_number": hit.object_number,
        "title": hit.title,
        "lies_in": [
            {"container_number": one.container_number, "location": one.location, "parts": one.parts}
            for one in hit.lies_in
        ],
        "out_since": hit.out_since,
    }


def _object_line(hit: ObjectHit) -> str:
    where = "; ".join(
        " ".join(filter(None, (one.container_number, *one.parts, f"({one.location})")))
        for one in hit.lies_in
    ).replace(" ()", "")
    out = f", out since {write_date(hit.out_since.date())}" if hit.out_since else ""
    return f"{hit.object_number}  {hit.title}  in {where or 'no container'}{out}"


def _container_line(hit: ContainerHit) -> str:
    return f"{hit.container_number}  {hit.title}  {hit.location}".rstrip()


def _show_container(connection: Connection, number: str) -> tuple[dict[str, object], list[str]]:
    record, packing = load_container(connection, number), load_packing(connection, number)
    outs = load_outs(connection, container_number=number)
    data: dict[str, object] = {
        "container_number": number,
        "title": record.title,
        "location": record.location,
        "revision": packing.revision,
        "packed_by": packing.packed_by,
        "packed_on": packing.packed_on,
        "reason": packing.reason,
        "places": [_place_data(place) for place in packing.places],
        "out": [one.slip.object_number for one in outs],
    }
    head = f"{number}  {record.title}  {' / '.join(record.location)}".rstrip()
    packed = f"Revision {packing.revision}, packed by {packing.packed_by or 'somebody'}"
    on = f" on {write_date(packing.packed_on)}" if packing.packed_on else ""
    lines = [head, packed + on + (f": {packing.reason}" if packing.reason else "")]
    lines += [_place_line(place) for place in packing.places] or ["  Nothing is packed in it."]
    lines += [f"Out: {one.slip.object_number}, with {one.slip.to_whom}" for one in outs]
    return data, lines


def _judge_attached(connection: Connection, ruler: Ruler, number: str) -> list[JudgedCard]:
    """Say of every card that is on a container what is wrong with it; nothing where it holds."""
    listed = list_reprints_of(connection, ruler, number)
    return _judge(load_attached(connection, [number]), listed)


def _judge_tags(connection: Connection, ruler: Ruler, number: str) -> list[JudgedCard]:
    """Say of the tag on an object what is wrong with it; nothing where it holds."""
    listed = list_reprints_of_object(connection, ruler, number)
    return _judge(load_attached_tags(connection, [number]), listed)


def _judge(attached: Iterable[PrintedCard], listed: ReprintList) -> list[JudgedCard]:
    wrong = {
        one.printed.card_id: tuple(change.words for change in one.reprint.changes)
        for one in listed.out_of_date
    }
    return [JudgedCard(card.card_id, card.made, wrong.get(card.card_id, ())) for card in attached]


def _card_data(card: JudgedCard) -> dict[str, object]:
    made = card.made
    return {
        "card": card.card_id,
        "kind": made.kind,
        "side": made.side,
        "revision": made.revision,
        "holds": not card.changes,
        "reasons": card.changes,
    }


def _card_line(card: JudgedCard) -> str:
    made = card.made
    said = f"no longer holds: {'; '.join(card.changes)}" if card.changes else "holds"
    revision = "" if made.object_number else f" r{made.revision}"
    return f"  Card {card.card_id}: {name_card(made)}{revision} {said}"


def _show_object_or_nothing(
    connection: Connection, number: str
) -> tuple[dict[str, object], list[str]]:
    try:
        return _show_object(connection, number)
    except NotFoundError as error:
        raise NotFoundError(number, what="container or object") from error


def _show_object(connection: Connection, number: str) -> tuple[dict[str, object], list[str]]:
    record, holders = load_object(connection, number), load_holders(connection, [number])
    outs = load_outs(connection, object_number=number)
    data: dict[str, object] = {
        "object_number": number,
        "title": record.title,
        "lies_in": list(holders),
        "hazards": [{"code": one.code, "state": one.state.value} for one in record.hazards],
        "out": [{"slip": one.out_id, "to": one.slip.to_whom} for one in outs],
    }
    lines = [f"{number}  {record.title}".rstrip()]
    lines += [f"In {container}" for container in holders] or ["In no container."]
    lines += [f"Hazard: {one.code}, {one.state.value}" for one in record.hazards]
    lines += [
        f"Out since {write_date(one.stamp.at.date())}, with {one.slip.to_whom}" for one in outs
    ]
    return data, lines


def _place_data(place: PlaceRecord) -> dict[str, object]:
    return {
        "object_number": place.object_number,
        "parts": place.parts,
        "layer": place.layer,
        "compartment": place.compartment,
        "note": place.note,
    }


def _place_line(place: PlaceRecord) -> str:
    said = (f"layer {place.layer}", place.compartment, ", ".join(place.parts), place.note)
    return f"  {place.object_number}  {'  '.join(filter(None, said))}"


def _event_data(event: Event) -> dict[str, object]:
    return {
        "change": event.change,
        "at": event.stamp.at,
        "by": event.stamp.actor,
        "verb": event.entry.verb,
        "container_number": event.entry.container_number,
        "object_number": event.entry.object_number,
        "revision": event.entry.revision,
        "detail": event.entry.detail,
    }


def _event_line(event: Event) -> str:
    entry = event.entry
    what = " ".join(filter(None, (entry.container_number, entry.object_number)))
    revision = f" r{entry.revision}" if entry.revision else ""
    at = event.stamp.at.astimezone().strftime("%Y-%m-%d %H:%M")
    return f"{at}  {event.stamp.actor}: {entry.verb} {what}{revision}"
