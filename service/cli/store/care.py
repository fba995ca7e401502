"""Looking after the store room and the store: checks, what is due, backup and restore."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path
from typing import Annotated

import typer

from service.cards.words import count, write_date
from service.cli.printing import show_progress
from service.cli.store.at_desk import By, Json, answer, at_desk, now, open_console, read_day
from service.config import PREFIX, Settings
from service.errors import ConfigError
from service.keeping.backup import make_backup, restore_backup
from service.store.kept.checks import list_due, save_check
from service.store.kept.outs import load_overdue
from service.store.open import reading, writing

app = typer.Typer()

_YEAR_DAYS = 365
"""Pests and tissue are looked at yearly at least (common practice, no source)."""


@app.command("checked")
def checked(
    context: typer.Context,
    container: Annotated[str, typer.Argument(help="The number of the container.")],
    on: Annotated[str, typer.Option("--on", help="The day, such as 2026-11-25; else today.")] = "",
    note: Annotated[str, typer.Option(help="What was seen: pests, tissue, corrosion.")] = "",
    by: By = "",
    as_json: Json = False,
) -> None:
    """Note that a container was looked at."""
    at = at_desk(context)
    stamp = at.stamp(by)
    day = read_day(on) if on else stamp.at.date()
    with at.store() as engine, writing(engine) as connection:
        save_check(connection, container, day, note=note, stamp=stamp)
    data = {"container_number": container, "checked_on": day}
    answer(data, [f"{container}: checked on {write_date(day)}."], as_json=as_json)


@app.command("due")
def due(
    context: typer.Context,
    days: Annotated[int, typer.Option(min=1, help="Not looked at for so many days.")] = _YEAR_DAYS,
    as_json: Json = False,
) -> None:
    """List what is to be checked, as one walks, and what should be back by now."""
    today = now().date()
    with at_desk(context).store() as engine, reading(engine) as connection:
        found = list_due(connection, before=today - timedelta(days=days))
        overdue = load_overdue(connection, today)
    data = {
        "due": [
            {
                "container_number": one.container_number,
                "title": one.title,
                "location": one.location,
                "last_on": one.last_on,
            }
            for one in found
        ],
        "overdue": [
            {"object_number": one.slip.object_number, "due_back": one.slip.due_back}
            for one in overdue
        ],
    }
    lines = [
        f"{one.container_number}  {one.location}"
        f"  {f'last checked {write_date(one.last_on)}' if one.last_on else 'never checked'}"
        for one in found
    ]
    lines += [
        f"{one.slip.object_number} should be back in {one.slip.container_number};"
        f" it is with {one.slip.to_whom}"
        for one in overdue
    ]
    answer(data, lines or ["Nothing is due."], as_json=as_json)


@app.command("backup")
def backup(
    context: typer.Context,
    target: Annotated[Path, typer.Argument(help="The file to write, such as store.zip.")],
    as_json: Json = False,
) -> None:
    """Write one file that holds everything, while others go on working."""
    target.parent.mkdir(parents=True, exist_ok=True)
    with at_desk(context).desk() as desk, show_progress(open_console()) as tell:
        made = make_backup(desk.engine, desk.shelf, target, on_progress=tell)
    data = {"path": str(target), "files": made.files, "length_bytes": made.length_bytes}
    megabytes = made.length_bytes / 1_000_000
    line = f"{target}: the store and {count(made.files, 'file')}, {megabytes:.1f} MB, read back."
    answer(data, [line], as_json=as_json)


@app.command("restore")
def restore(
    context: typer.Context,
    source: Annotated[Path, typer.Argument(help="A file that `backup` wrote.")],
    data: Annotated[
        Path | None, typer.Option("--data", help="The data folder; else the one that is set.")
    ] = None,
    as_json: Json = False,
) -> None:
    """Put a backup into a data folder that has no store yet."""
    folder = data or _data_folder(at_desk(context).settings)
    with show_progress(open_console()) as tell:
        files = restore_backup(source, folder, on_progress=tell)
    line = f"{folder}: the store and {count(files, 'file')} are back."
    answer({"data": str(folder), "files": files}, [line], as_json=as_json)


def _data_folder(settings: Settings) -> Path:
    """Give the folder that a backup goes into.

    Raises:
        ConfigError: When the store lies elsewhere: it would not find what was put there.
    """
    for name, value in (("DATABASE", settings.database), ("FILES", settings.files)):
        if value:
            reason = "a backup goes into a data folder, and this names another place; use --data"
            raise ConfigError(PREFIX + name, reason=reason)
    return settings.data
