"""What is attached, which of it no longer tells the truth, and what a scan says."""

from __future__ import annotations

import csv
from pathlib import Path
from typing import Annotated

import typer

from service.cards.kinds import END_LABEL, find_kind
from service.cards.swap_list import NOT_PACKED
from service.cards.words import count
from service.cli.at_desk import By, Json, answer, at_desk, open_console
from service.cli.printing import copy_whole, show_progress
from service.keeping.printing.attach import (
    Attached,
    ScannedCard,
    attach_card,
    attach_run,
    attach_scanned,
)
from service.keeping.printing.scanned import read_card
from service.keeping.reprints import OutOfDate, list_reprints, list_reprints_of
from service.keeping.scan import answer_scan
from service.keeping.swap_list import print_swaps
from service.records.record import Museum
from service.store.load_records import load_museum
from service.store.open import reading, writing
from service.store.printed.card import MadeCard
from service.store.today.note import Unattached

app = typer.Typer()


@app.command("attached")
def attached(
    context: typer.Context,
    run: Annotated[int | None, typer.Option(help="All cards of this run that wait.")] = None,
    card: Annotated[int | None, typer.Option(help="One printed card, by its number.")] = None,
    scanned: Annotated[str, typer.Option(help="What the symbol of a card says.")] = "",
    on: Annotated[str, typer.Option("--on", help="The container that was scanned with it.")] = "",
    by: By = "",
    as_json: Json = False,
) -> None:
    """Say that cards are on their containers, tags on their objects; those before are withdrawn."""
    at = at_desk(context)
    if sum((run is not None, card is not None, bool(scanned))) != 1 or bool(scanned) != bool(on):
        message = "name one of --run, --card, or --scanned with --on"
        raise typer.BadParameter(message)
    with at.store() as engine, writing(engine) as connection:
        stamp = at.stamp(by)
        if run is not None:
            done = attach_run(connection, run, stamp=stamp)
        elif card is not None:
            done = (attach_card(connection, card, stamp=stamp),)
        else:
            seen = read_scanned(scanned, load_museum(connection))
            done = (attach_scanned(connection, seen, container_number=on, stamp=stamp),)
    data = {"attached": [_attached_data(one) for one in done]}
    answer(data, list(map(_attached_line, done)) or ["None of them waited."], as_json=as_json)


@app.command("reprints")
def reprints(
    context: typer.Context,
    container: Annotated[
        str, typer.Option("--why-not", help="Ask for one container, also if it is not listed.")
    ] = "",
    csv_file: Annotated[
        Path | None, typer.Option("--csv", help="Write the list as a table, too.")
    ] = None,
    as_json: Json = False,
) -> None:
    """List the attached cards that no longer tell the truth, and why, the most urgent first."""
    with at_desk(context).desk() as desk, show_progress(open_console()) as tell:
        ruler = desk.workshop.ruler
        if container:
            with reading(desk.engine) as connection:
                found = list_reprints_of(connection, ruler, container)
        else:
            found = list_reprints(desk.engine, ruler, on_progress=tell)
    rows = [_reprint_data(one) for one in found.out_of_date]
    failed = [*found.failed, *found.failed_tags]
    data = {
        "reprints": rows,
        "not_attached": list(map(_unattached_data, found.unattached)),
        "failed": [
            {"number": number, "message": str(error), "advice": error.advice}
            for number, error in failed
        ],
    }
    if csv_file is not None:
        _write_csv(csv_file, rows)
    lines = [line for one in found.out_of_date for line in _reprint_lines(one)]
    lines += [f"[not compared] {number}: {error} {error.advice}" for number, error in failed]
    lines = lines or ["Every card that is attached says what the records say today."]
    if found.unattached:
        lines.append(f"{count(len(found.unattached), 'card')} not attached yet.")
    answer(data, lines, as_json=as_json)


@app.command("swap-list")
def swap_list(
    context: typer.Context,
    output: Annotated[Path, typer.Option("-o", "--output", help="The PDF to write.")],
    paper: Annotated[str, typer.Option(help="A4 or Letter.")] = "A4",
    by: By = "",
    as_json: Json = False,
) -> None:
    """Print the reprint list to walk with: old and new side by side, with boxes to tick."""
    at = at_desk(context)
    with at.desk() as desk, show_progress(open_console()) as tell:
        chosen = "Letter" if paper.casefold() == "letter" else "A4"
        made = print_swaps(desk, stamp=at.stamp(by), paper=chosen, on_progress=tell)
        output.parent.mkdir(parents=True, exist_ok=True)
        copy_whole(made, output)
    answer({"path": str(output)}, [f"{output}: every page was read back."], as_json=as_json)


@app.command("scan")
def scan(
    context: typer.Context,
    container: Annotated[str, typer.Argument(help="The number on the card.")],
    revision: Annotated[int | None, typer.Option("--r", help="The revision on the card.")] = None,
    letters: Annotated[str, typer.Option("--k", help="The letters on the card.")] = "",
    as_json: Json = False,
) -> None:
    """Say whether a printed card still holds."""
    with at_desk(context).desk() as desk, reading(desk.engine) as connection:
        said = answer_scan(
            connection, desk.workshop.ruler, container, revision=revision, letters=letters
        )
    data = {
        "container_number": container,
        "answer": said.standing.answer.value,
        "sentence": said.standing.sentence,
        "changes": said.changes,
        "warnings": said.warnings,
        "lift": said.lift,
        "questions": said.questions,
    }
    lines = [said.standing.answer.value.upper(), said.standing.sentence]
    lines += [f"  {change}" for change in said.changes]
    lines += [line for line in (*said.warnings, said.lift, said.questions) if line]
    answer(data, lines, as_json=as_json)


def read_scanned(text: str, museum: Museum) -> ScannedCard:
    """Read what the symbol of a dated card says: the museum's address with number, r and k.

    An address of another pattern, of before the museum changed it, has the number at its end.

    Raises:
        BadParameter: When it is no such address.
    """
    card = read_card(text, museum)
    if card is None:
        message = f"{text!r} is not the symbol of a lid card, cover card or contents list"
        raise typer.BadParameter(message)
    return card


def _attached_data(one: Attached) -> dict[str, object]:
    made = one.card.made
    return {
        "card": one.card.card_id,
        "container_number": made.container_number,
        "object_number": made.object_number,
        "kind": made.kind,
        "side": made.side,
        "replaces": one.replaced.card_id if one.replaced else None,
    }


def _attached_line(one: Attached) -> str:
    made, before = one.card.made, one.replaced.made if one.replaced else None
    if made.object_number:
        return f"{name_card(made)} is attached{' in place of the one before' if before else ''}."
    replaced = f" in place of r{before.revision}" if before else ""
    return f"{made.container_number}: {name_card(made)} r{made.revision} is attached{replaced}."


def _unattached_data(one: Unattached) -> dict[str, object]:
    return {
        "container_number": one.container_number,
        "kind": one.kind,
        "side": one.side,
        "is_printed": one.is_made,
    }


def _reprint_data(one: OutOfDate) -> dict[str, object]:
    made = one.printed.made
    return {
        "container_number": one.reprint.container_number,
        "object_number": made.object_number,
        "location": one.reprint.location,
        "kind": made.kind,
        "side": made.side,
        "urgency": one.reprint.urgency.name.lower().replace("_", " "),
        "printed_revision": None if made.object_number else made.revision,
        "reasons": [change.words for change in one.reprint.changes],
    }


def _reprint_lines(one: OutOfDate) -> list[str]:
    made = one.printed.made
    where = " / ".join(one.reprint.location)
    urgency = one.reprint.urgency.name.lower().replace("_", " ")
    name = name_card(made) if made.object_number else f"{name_card(made)} r{made.revision}"
    head = f"{one.reprint.container_number or NOT_PACKED}  {name}  [{urgency}]  {where}"
    return [head.rstrip(), *(f"    {change.words}" for change in one.reprint.changes)]


def name_card(made: MadeCard) -> str:
    """Name a card as people do, such as: End label, side 2, or a tag with its object."""
    if made.object_number:
        return f"{find_kind(made.kind).name} of {made.object_number}"
    side = f", side {made.side}" if made.kind == END_LABEL.code else ""
    return f"{find_kind(made.kind).name}{side}"


def _write_csv(path: Path, rows: list[dict[str, object]]) -> None:
    """Write the list as a table; a cell that begins like a formula is told to be text."""
    names = (
        "container_number",
        "object_number",
        "location",
        "kind",
        "side",
        "urgency",
        "printed_revision",
        "reasons",
    )
    path.parent.mkdir(parents=True, exist_ok=True)
    with path.open("w", encoding="utf-8-sig", newline="") as target:
        writer = csv.writer(target)
        writer.writerow(names)
        for row in rows:
            writer.writerow([_cell(row[name]) for name in names])


def _cell(value: object) -> str:
    parts = value if isinstance(value, list | tuple) else [value]
    text = "; ".join("" if part is None else str(part) for part in parts)
    return f"'{text}" if text[:1] in {"=", "+", "-", "@", "\t", "\r"} else text
