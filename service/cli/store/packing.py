"""Packing and repacking, and what is out for a while."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Annotated

import typer

from service.cli.at_desk import By, Json, Seen, Why, answer, at_desk, now, read_day
from service.cli.report import finding_as_data, write_finding
from service.cli.store.papers import hand_over
from service.errors import NotFoundError
from service.findings import Finding
from service.keeping import repack
from service.keeping.checks.packings import check_container
from service.keeping.rounds.slips import print_slips
from service.records.record import PackingRecord, PlaceRecord
from service.store.handles import Connection
from service.store.kept.outs import Slip, load_outs, note_back, note_out
from service.store.load_records import load_containers
from service.store.open import writing
from service.store.packing.load import find_held, find_object, load_packing
from service.store.packing.move import Move, move_object

app = typer.Typer()

Container = Annotated[str, typer.Argument(help="The number of the container.")]
Object = Annotated[str, typer.Argument(help="The number of the object.")]
From = Annotated[str, typer.Option("--from", help="The container it lies in.")]
Layer = Annotated[int, typer.Option(min=1, help="The layer; 1 is the top one.")]
Compartment = Annotated[str, typer.Option(help="The compartment, such as B3.")]
Note = Annotated[str, typer.Option(help="How it lies, such as: in tissue.")]
NewLayer = Annotated[
    int | None, typer.Option("--layer", min=1, help="The layer, 1 on top; else as it is, or 1.")
]
NewCompartment = Annotated[
    str | None, typer.Option("--compartment", help="The compartment, such as B3; else as it is.")
]
NewNote = Annotated[
    str | None, typer.Option("--note", help="How it lies, such as: in tissue; else as it is.")
]
Part = Annotated[list[str] | None, typer.Option(help="Only this part; may be repeated.")]


@app.command("pack")
def pack(
    context: typer.Context,
    container: Container,
    number: Object,
    layer: NewLayer = None,
    compartment: NewCompartment = None,
    note: NewNote = None,
    part: Part = None,
    why: Why = "",
    revision: Seen = None,
    by: By = "",
    as_json: Json = False,
) -> None:
    """Put an object into a container, or give one that lies there another place."""
    at = at_desk(context)
    with at.store() as engine, writing(engine) as connection:
        seen = _see(connection, container, revision, why)
        lies_here = container in find_object(connection, number)
        change = repack.place_anew if lies_here else repack.put_in
        weighed = _weighed(connection, [container])
        lying = _place_now(connection, seen, PlaceRecord(number, tuple(part or ())))
        place = replace(
            lying,
            layer=lying.layer if layer is None else layer,
            compartment=lying.compartment if compartment is None else compartment,
            note=lying.note if note is None else note,
        )
        packed = change(connection, seen, place, stamp=at.stamp(by))
        done = _look(connection, packed, weighed)
    answer(_packed_data(done), _packed_lines(done), as_json=as_json)


@app.command("unpack")
def unpack(
    context: typer.Context,
    container: Container,
    number: Object,
    part: Part = None,
    why: Why = "",
    revision: Seen = None,
    by: By = "",
    as_json: Json = False,
) -> None:
    """Take an object out of a container for good; for a while use `out`."""
    at = at_desk(context)
    with at.store() as engine, writing(engine) as connection:
        seen = _see(connection, container, revision, why)
        weighed = _weighed(connection, [container])
        packed = repack.take_out(
            connection, seen, number, parts=tuple(part or ()), stamp=at.stamp(by)
        )
        done = _look(connection, packed, weighed)
    answer(_packed_data(done), _packed_lines(done), as_json=as_json)


@app.command("move")
def move(
    context: typer.Context,
    number: Object,
    to: Annotated[str, typer.Option("--to", help="The container it goes to.")],
    from_: From = "",
    layer: Layer = 1,
    compartment: Compartment = "",
    note: Note = "",
    part: Part = None,
    why: Why = "",
    by: By = "",
    as_json: Json = False,
) -> None:
    """Move an object to another container; both get a new revision, or neither."""
    at = at_desk(context)
    place = PlaceRecord(number, tuple(part or ()), layer, compartment, note)
    with at.store() as engine, writing(engine) as connection:
        left = from_ or _only_container(connection, number)
        revisions = [find_held(connection, one).revision for one in (left, to)]
        wanted = Move(place, left, revisions[0], to, revisions[1], why)
        weighed = _weighed(connection, [left, to])
        moved = move_object(connection, wanted, stamp=at.stamp(by))
        done = [_look(connection, packed, weighed) for packed in moved]
    lines = [line for one in done for line in _packed_lines(one)]
    answer({"packings": list(map(_packed_data, done))}, lines, as_json=as_json)


@app.command("out")
def out(
    context: typer.Context,
    number: Object,
    to: Annotated[str, typer.Option("--to", help="Who takes it, or where it goes.")],
    due: Annotated[str, typer.Option(help="When it is due back, such as 2026-12-01.")] = "",
    from_: From = "",
    part: Part = None,
    why: Why = "",
    slip_file: Annotated[
        Path | None, typer.Option("--slip", help="Print the slip for the gap, too: the PDF.")
    ] = None,
    by: By = "",
    as_json: Json = False,
) -> None:
    """Note that an object is out for a while; its place is kept, and no card becomes wrong."""
    at = at_desk(context)
    with at.store() as engine, writing(engine) as connection:
        left = from_ or _only_container(connection, number)
        slip = Slip(number, left, tuple(part or ()), to, why, read_day(due) if due else None)
        noted = note_out(connection, slip, stamp=at.stamp(by))
    if slip_file is not None:
        with at.desk() as desk:
            hand_over(print_slips(desk, [noted]), slip_file)
    data = {"slip": noted.out_id, "object_number": number, "container_number": left}
    line = (
        f"{number} is out of {left}, with {to}. Leave a slip at its place: number {noted.out_id}."
    )
    answer(data, [line], as_json=as_json)


@app.command("back")
def back(context: typer.Context, number: Object, by: By = "", as_json: Json = False) -> None:
    """Note that an object is back at its place."""
    at = at_desk(context)
    with at.store() as engine, writing(engine) as connection:
        slips = load_outs(connection, object_number=number)
        if not slips:
            raise NotFoundError(number, what="object that is out")
        for slip in slips:
            note_back(connection, slip.out_id, stamp=at.stamp(by))
    container = slips[0].slip.container_number
    data = {"object_number": number, "container_number": container}
    answer(data, [f"{number} is back in {container}."], as_json=as_json)


def _see(connection: Connection, container: str, revision: int | None, why: str) -> repack.Seen:
    """Give the state that was seen: as told, else the one of this moment."""
    current = find_held(connection, container).revision
    return repack.Seen(container, current if revision is None else revision, why)


def _place_now(connection: Connection, seen: repack.Seen, wanted: PlaceRecord) -> PlaceRecord:
    """Give the place of an object as it was seen, the new one where it does not lie there."""
    packing = load_packing(connection, seen.container_number, revision=seen.revision)
    named = (wanted.object_number, wanted.parts)
    lying = (one for one in packing.places if (one.object_number, one.parts) == named)
    return next(lying, wanted)


def _only_container(connection: Connection, number: str) -> str:
    """Find where an object lies.

    Raises:
        NotFoundError: When it lies nowhere.
        BadParameter: When parts of it lie in several containers.
    """
    found = find_object(connection, number)
    if not found:
        raise NotFoundError(number, what="packed object")
    if len(found) > 1:
        message = f"{number} lies in {', '.join(found)}; name one of them with --from"
        raise typer.BadParameter(message)
    return found[0]


@dataclass(frozen=True, slots=True)
class _Repacked:
    """A container as it is packed now, what was noticed of that, and whether to weigh it again."""

    packed: PackingRecord
    findings: Sequence[Finding]
    weigh_again: bool


def _look(connection: Connection, packed: PackingRecord, weighed_before: set[str]) -> _Repacked:
    """Look at once whether it is well packed: the box still stands open."""
    number = packed.container_number
    findings = check_container(connection, number, today=now().date())
    lost = number in weighed_before - _weighed(connection, [number])
    return _Repacked(packed, findings, lost)


def _weighed(connection: Connection, numbers: list[str]) -> set[str]:
    """Name those of the containers whose gross weight was measured."""
    found = load_containers(connection, numbers)
    return {one.container_number for one in found if one.gross is not None}


def _packed_data(done: _Repacked) -> dict[str, object]:
    return {
        "container_number": done.packed.container_number,
        "revision": done.packed.revision,
        "objects": [place.object_number for place in done.packed.places],
        "weigh_again": done.weigh_again,
        "findings": [finding_as_data(finding) for finding in done.findings],
    }


def _packed_lines(done: _Repacked) -> list[str]:
    packed = done.packed
    state = f"{packed.container_number} is at revision {packed.revision} now"
    lines = [f"{state} and holds {len(packed.places)}. `store reprints` says what to replace."]
    if done.weigh_again:
        lines.append("  It was weighed with other things in it: weigh it again.")
    return lines + list(map(write_finding, done.findings))
