"""The print command: a progress bar, files on disk, and a few lines of result."""

from __future__ import annotations

import io
import json
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, replace
from pathlib import Path
from typing import IO, Annotated

import typer
from rich.console import Console
from rich.progress import BarColumn, MofNCompleteColumn, Progress, TaskID, TextColumn

from service.cards.words import count
from service.cli.part_used import go_on, remember_rest
from service.cli.report import EXIT_FINDINGS, count_findings, finding_as_data, show_findings
from service.config import Settings
from service.errors import TooManyFilesError
from service.findings import Severity, worst_severity
from service.pipeline.options import Outcome, PrintOptions
from service.pipeline.read import open_source, read_source
from service.pipeline.ready import Progress as Tell
from service.pipeline.run import print_collection
from service.wiring import open_workshop

ALL = "all"
Kinds = Annotated[
    list[str] | None,
    typer.Option(help="A kind of card, several times for several; `all` for every kind."),
]
PrinterName = Annotated[str, typer.Option(help="A printer measured with `calibrate enter`.")]
TrayName = Annotated[str, typer.Option(help="The printer's tray that holds the sheets.")]
Tagged = Annotated[
    list[str] | None, typer.Option("--object", help="Print the tag of this object alone.")
]
GoesOn = Annotated[
    bool,
    typer.Option("--continue", help="Begin where the last sheet of --stock ended, and remember."),
]


@dataclass(frozen=True, slots=True)
class PrintRequest:
    """What to print, where to, how to answer, and whether to go on with a part-used sheet."""

    source: Path
    output: Path
    options: PrintOptions
    as_json: bool = False
    goes_on: bool = False


def print_source(console: Console, settings: Settings, request: PrintRequest) -> int:
    """Print a source into files; gives 1 where a card or record could not be printed.

    Raises:
        ServiceError: When there is nothing to hand over.
    """
    if request.goes_on:
        request = replace(request, options=go_on(settings.data, request.options))
    outcome, paths = _print(console, settings, request)
    if request.goes_on:
        console.print(remember_rest(settings.data, outcome), markup=False)
    if request.as_json:
        print(_as_json(outcome, paths))  # noqa: T201 - the answer of the command itself
    else:
        show_findings(console, outcome.findings)
        for path, file in zip(paths, outcome.files, strict=True):
            console.print(
                f"{path}: {count(file.cards, 'card')} on {count(file.sheets, 'sheet')}",
                markup=False,
            )
        console.print(f"Every page was read back. {count_findings(outcome.findings)}.")
    return EXIT_FINDINGS if worst_severity(outcome.findings) is Severity.ERROR else 0


def _print(
    console: Console, settings: Settings, request: PrintRequest
) -> tuple[Outcome, list[Path]]:
    opened = open_source(request.source)
    with (
        open_workshop(settings.data, processes=settings.processes) as workshop,
        show_progress(console) as tell,
    ):
        collection = read_source(opened.files, workshop.workers)
        outcome = print_collection(
            collection, opened.photos, request.options, workshop, on_progress=tell
        )
        return outcome, _write(outcome, request)


@contextmanager
def show_progress(console: Console) -> Iterator[Tell]:
    """Show one bar a step; nothing moves where the output is no terminal."""
    columns = (TextColumn("{task.description:<8}"), BarColumn(), MofNCompleteColumn())
    with Progress(*columns, console=console, disable=not console.is_terminal) as bars:
        tasks: dict[str, TaskID] = {}

        def tell(step: str, done: int, of: int) -> None:
            if step not in tasks:
                tasks[step] = bars.add_task(step, total=of)
            bars.update(tasks[step], completed=done)

        yield tell


def _write(outcome: Outcome, request: PrintRequest) -> list[Path]:
    """Write each file whole or not at all.

    Raises:
        TooManyFilesError: When several files would have to go into one name.
    """
    if request.output.suffix.casefold() != ".pdf":
        request.output.mkdir(parents=True, exist_ok=True)
        paths = [request.output / file.name for file in outcome.files]
    elif len(outcome.files) == 1:
        request.output.parent.mkdir(parents=True, exist_ok=True)
        paths = [request.output]
    else:
        raise TooManyFilesError(count=len(outcome.files))
    for path, file in zip(paths, outcome.files, strict=True):
        copy_whole(file.path, path)
    return paths


def copy_whole(source: Path, path: Path) -> None:
    """Copy a file so that under its new name there is all of it, or nothing."""
    with source.open("rb") as file:
        _fill_whole(file, path)


def write_whole(data: bytes, path: Path) -> None:
    """Write bytes so that under the name there are all of them, or nothing."""
    _fill_whole(io.BytesIO(data), path)


def _fill_whole(source: IO[bytes], path: Path) -> None:
    with tempfile.NamedTemporaryFile(dir=path.parent, delete=False) as part:
        shutil.copyfileobj(source, part)
    Path(part.name).chmod(0o644)
    Path(part.name).replace(path)


def _as_json(outcome: Outcome, paths: list[Path]) -> str:
    files = [
        {
            "path": str(path),
            "kind": file.kind.code,
            "stock": file.stock.name,
            "cards": file.cards,
            "sheets": file.sheets,
        }
        for path, file in zip(paths, outcome.files, strict=True)
    ]
    findings = [finding_as_data(finding) for finding in outcome.findings]
    return json.dumps({"files": files, "findings": findings}, ensure_ascii=False, indent=2)
