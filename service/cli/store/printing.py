"""Printing from the store, and old runs again."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Annotated

import typer

from service.cards.kinds import OBJECT_TAG, find_kind
from service.cards.words import count
from service.cli.at_desk import By, Json, answer, at_desk, leave, open_console
from service.cli.own_stock import name_stock
from service.cli.printing import show_progress, write_whole
from service.cli.report import finding_as_data, show_findings
from service.keeping.desk import Desk
from service.keeping.paper.own_stocks import load_own_stocks
from service.keeping.printing.printers_file import name_printer
from service.keeping.printing.prints import MadeRun, print_run
from service.keeping.printing.spoil import SpoiledSheet, print_spoiled
from service.keeping.reprints import name_cards, name_reprints
from service.keeping.sending.send import find_printer, load_files, send_files
from service.pipeline.options import CardKey, PrintOptions, object_tag_keys
from service.sheets.printers.used_sheet import UsedSheet
from service.store.kept.used_sheets import load_used_sheets
from service.store.open import reading
from service.store.printed.card import RunFile
from service.store.printed.runs import list_runs, load_run_record

app = typer.Typer()

_RUNS_SHOWN = 100

Output = Annotated[Path, typer.Option("-o", "--output", help="The folder for the PDFs.")]
PrinterName = Annotated[str, typer.Option(help="A printer measured with `calibrate`.")]
TrayName = Annotated[str, typer.Option(help="The printer's tray that holds the sheets.")]
RunNumber = Annotated[int, typer.Argument(help="The number of the print run.")]
PrintedCards = Annotated[
    list[int] | None,
    typer.Option(min=1, help="Again, as it is worded today: a printed card; may be repeated."),
]
Tagged = Annotated[
    list[str] | None, typer.Option("--object", help="Only the tag of this object; may be repeated.")
]


@app.command("print")
def print_(
    context: typer.Context,
    output: Output,
    container: Annotated[
        list[str] | None, typer.Argument(help="Containers; without one, all of them.")
    ] = None,
    card: PrintedCards = None,
    reprints: Annotated[
        bool, typer.Option("--reprints", help="The cards of the reprint list and no others.")
    ] = False,
    tagged: Tagged = None,
    kind: Annotated[list[str] | None, typer.Option(help="A kind of card; may be repeated.")] = None,
    stock: Annotated[str, typer.Option(help="A stock by name, where not chosen by size.")] = "",
    paper: Annotated[str, typer.Option(help="A4 or Letter, where stocks are chosen.")] = "A4",
    printer: PrinterName = "",
    tray: TrayName = "",
    goes_on: Annotated[
        bool, typer.Option("--continue", help="Go on with the sheets that were begun.")
    ] = False,
    by: By = "",
    as_json: Json = False,
) -> None:
    """Print cards of the store, and remember each one."""
    at, console = at_desk(context), open_console()
    _refuse_several(container, card, reprints, tagged)
    _refuse_other_kinds(tagged or (), kind or ())
    with at.desk() as desk, show_progress(console) as tell:
        options = PrintOptions(
            kinds=tuple(map(find_kind, kind or ())),
            stock=name_stock(stock, own=load_own_stocks(desk.data_folder)) if stock else None,
            paper="Letter" if paper.casefold() == "letter" else "A4",
            containers=frozenset(container or ()),
            only=_name_only(desk, card or (), tagged or (), reprints=reprints),
            begun=_begun(desk) if goes_on else (),
            printer=name_printer(at.settings.data, printer, tray),
        )
        made = print_run(desk, options, stamp=at.stamp(by), on_progress=tell)
        paths = write_files(desk, made.files, output)
    _tell_run(made, paths, as_json=as_json)


@app.command("spoiled")
def spoiled(
    context: typer.Context,
    run: RunNumber,
    file: Annotated[str, typer.Option(help="The name of the PDF.")],
    sheet: Annotated[int, typer.Option(min=1, help="The sheet of it, from 1.")],
    output: Output,
    printer: PrinterName = "",
    tray: TrayName = "",
    by: By = "",
    as_json: Json = False,
) -> None:
    """Print the cards of a spoiled sheet again, alone, at the next free position."""
    at = at_desk(context)
    with at.desk() as desk, show_progress(open_console()) as tell:
        setup = name_printer(at.settings.data, printer, tray)
        wanted = SpoiledSheet(run, file, sheet, setup)
        made = print_spoiled(desk, wanted, stamp=at.stamp(by), on_progress=tell)
        paths = write_files(desk, made.files, output)
    _tell_run(made, paths, as_json=as_json)


@app.command("runs")
def runs(
    context: typer.Context,
    before: Annotated[int | None, typer.Option(help="Only runs before this one.")] = None,
    as_json: Json = False,
) -> None:
    """List print runs, the latest first, a hundred at a time."""
    with at_desk(context).store() as engine, reading(engine) as connection:
        found = list_runs(connection, limit=_RUNS_SHOWN + 1, before=before)
    found, more = found[:_RUNS_SHOWN], found[_RUNS_SHOWN:]
    data = {
        "runs": [
            {
                "run": one.run_id,
                "at": one.stamp.at,
                "by": one.stamp.actor,
                "files": [file.name for file in one.files],
            }
            for one in found
        ]
    }
    lines = [
        f"{one.run_id}  {one.stamp.at.astimezone():%Y-%m-%d %H:%M}  {one.stamp.actor}:"
        f" {'; '.join(file.name for file in one.files)}"
        for one in found
    ]
    if more:
        lines.append(f"There are older ones: store runs --before {found[-1].run_id}")
    answer(data, lines or ["Nothing has been printed yet."], as_json=as_json)


@app.command("again")
def again(context: typer.Context, run: RunNumber, output: Output, as_json: Json = False) -> None:
    """Write the PDFs of an old run, byte for byte as they were."""
    with at_desk(context).desk() as desk:
        with reading(desk.engine) as connection:
            record = load_run_record(connection, run)
        paths = write_files(desk, record.files, output)
    answer({"run": run, "files": list(map(str, paths))}, list(map(str, paths)), as_json=as_json)


@app.command("send")
def send(
    context: typer.Context,
    run: RunNumber,
    printer: Annotated[str, typer.Option(help="A printer whose address is kept.")],
    file: Annotated[str, typer.Option(help="Only the PDF of this name.")] = "",
    by: By = "",
    as_json: Json = False,
) -> None:
    """Send the PDFs of a run to a printer, unscaled and one-sided."""
    at = at_desk(context)
    with at.desk() as desk:
        record = load_files(desk.engine, run, file)
        chosen = find_printer(at.settings.data, printer)
        sent = send_files(desk.shelf, chosen, record, sender=at.stamp(by).actor)
    data = {
        "sent": [{"file": one.file, "job_id": one.job_id, "notes": list(one.notes)} for one in sent]
    }
    lines = [f"{one.file}: job {one.job_id}" for one in sent]
    lines += list(dict.fromkeys(note for one in sent for note in one.notes))
    answer(data, lines, as_json=as_json)


def _refuse_several(*ways: object) -> None:
    if sum(map(bool, ways)) > 1:
        message = "name containers, --card, --object or --reprints, and only one of them"
        raise typer.BadParameter(message)


def _refuse_other_kinds(tagged: Sequence[str], kinds: Sequence[str]) -> None:
    if tagged and set(kinds) - {OBJECT_TAG.code}:
        message = "an --object gets its tag alone: name no other --kind"
        raise typer.BadParameter(message)


def _name_only(
    desk: Desk, cards: Sequence[int], tagged: Sequence[str], *, reprints: bool
) -> frozenset[CardKey]:
    if reprints:
        return name_reprints(desk.engine, desk.workshop.ruler)
    with reading(desk.engine) as connection:
        return name_cards(connection, cards) | object_tag_keys(tagged)


def _begun(desk: Desk) -> tuple[UsedSheet, ...]:
    with reading(desk.engine) as connection:
        return load_used_sheets(connection)


def write_files(desk: Desk, files: tuple[RunFile, ...], folder: Path) -> list[Path]:
    """Write the PDFs of a run into a folder, each whole or not at all, and name them."""
    folder.mkdir(parents=True, exist_ok=True)
    paths = []
    for file in files:
        path = folder / file.name
        write_whole(desk.shelf.get(file.sha256, ".pdf"), path)
        paths.append(path)
    return paths


def _tell_run(made: MadeRun, paths: list[Path], *, as_json: bool) -> None:
    data = {
        "run": made.run_id,
        "files": list(map(str, paths)),
        "cards": [
            {
                "card": one.card_id,
                "container_number": one.made.container_number,
                "object_number": one.made.object_number,
                "kind": one.made.kind,
                "side": one.made.side,
                "revision": one.made.revision,
                "file": one.made.file,
                "places": one.made.places,
            }
            for one in made.cards
        ],
        "findings": [finding_as_data(finding) for finding in made.findings],
    }
    lines = [*map(str, paths), f"Run {made.run_id}: {count(len(made.cards), 'card')}."]
    lines.append(f"When they are in their places: store attached --run {made.run_id}")
    answer(data, lines, as_json=as_json)
    if not as_json:
        show_findings(open_console(), made.findings)
    leave(made.findings)
