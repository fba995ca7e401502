"""Packing and repacking, and what is out for a while."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Annotated

import typer

from service.cli.report import finding_as_data, write_finding
from service.cli.store.at_desk import By, Json, Seen, Why, answer, at_desk, now, read_day
from service.errors import NotFoundError
from service.findings import Finding
from service.keeping import repack
from service.keeping.checks.packings import check_container
from service.records.record import PackingRecord, PlaceRecord
from service.store.handles import Connection
from service.store.kept.outs import Slip, load_outs, note_back, note_out
from service.store.open import writing
from service.store.packing.load import find_held, find_object
from service.store.packing.move import Move, move_object

app = typer.Typer()

Container = Annotated[str, typer.Argument(help="The number of the container.")]
Object = Annotated[str, typer.Argument(help="The number of the object.")]
From = Annotated[str, typer.Option("--from", help="The container it lies in.")]
Layer = Annotated[int, typer.Option(min=1, help="The layer; 1 is the top one.")]
Compartment = Annotated[str, typer.Option(help="The compartment, such as B3.")]
Note = Annotated[str, typer.Option(help="How it lies, such as: in tissue.")]
Part = Annotated[list[str] | None, typer.Option(help="Only this part; may be repeated.")]


@app.command("pack")
def pack(
    context: typer.Context,
    container: Container,
    number: Object,
    layer: Layer = 1,
    compartment: Compartment = "",
    note: Note = "",
    part: Part = None,
    why: Why = "",
    revision: Seen = None,
    by: By = "",
    as_json: Json = False,
) -> None:
    """Put an object into a container, or give one that lies there another place."""
    at = at_desk(context)
    place = PlaceRecord(number, tuple(part or ()), layer, compartment, note)
    with at.store() as engine, writing(engine) as connection:
        seen = _see(connection, container, revision, why)
        lies_here = container in find_object(connection, number)
        change = repack.place_anew if lies_here else repack.put_in
        packed = change(connection, seen, place, stamp=at.stamp(by))
        noticed = _check(connection, packed)
    _tell(packed, noticed, as_json=as_json)


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
        packed = repack.take_out(
            connection, seen, number, parts=tuple(part or ()), stamp=at.stamp(by)
        )
        noticed = _check(connection, packed)
    _tell(packed, noticed, as_json=as_json)


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
        moved = move_object(connection, wanted, stamp=at.stamp(by))
        noticed = [_check(connection, packed) for packed in moved]
    both = list(zip(moved, noticed, strict=True))
    lines = [line for one, findings in both for line in _packed_lines(one, findings)]
    data = {"packings": [_packed_data(one, findings) for one, findings in both]}
    answer(data, lines, as_json=as_json)


@app.command("out")
def out(
    context: typer.Context,
    number: Object,
    to: Annotated[str, typer.Option("--to", help="Who takes it, or where it goes.")],
    due: Annotated[str, typer.Option(help="When it is due back, such as 2026-12-01.")] = "",
    from_: From = "",
    part: Part = None,
    why: Why = "",
    by: By = "",
    as_json: Json = False,
) -> None:
    """Note that an object is out for a while; its place is kept, and no card becomes wrong."""
    at = at_desk(context)
    with at.store() as engine, writing(engine) as connection:
        left = from_ or _only_container(connection, number)
        slip = Slip(number, left, tuple(part or ()), to, why, read_day(due) if due else None)
        noted = note_out(connection, slip, stamp=at.stamp(by))
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


def _check(connection: Connection, packed: PackingRecord) -> Sequence[Finding]:
    """Look at once whether it is well packed: the box still stands open."""
    return check_container(connection, packed.container_number, today=now().date())


def _tell(packed: PackingRecord, findings: Sequence[Finding], *, as_json: bool) -> None:
    answer(_packed_data(packed, findings), _packed_lines(packed, findings), as_json=as_json)


def _packed_data(packed: PackingRecord, findings: Sequence[Finding]) -> dict[str, object]:
    return {
        "container_number": packed.container_number,
        "revision": packed.revision,
        "objects": [place.object_number for place in packed.places],
        "findings": list(map(finding_as_data, findings)),
    }


def _packed_lines(packed: PackingRecord, findings: Sequence[Finding]) -> list[str]:
    line = (
        f"{packed.container_number} is at revision {packed.revision} now and holds"
        f" {len(packed.places)}. `store reprints` says which cards to replace."
    )
    return [line, *map(write_finding, findings)]
