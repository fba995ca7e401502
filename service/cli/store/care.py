"""Looking after the store: backup and restore."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from service.cards.words import count
from service.cli.at_desk import Json, answer, at_desk, open_console
from service.cli.printing import show_progress
from service.config import PREFIX, Settings
from service.errors import ConfigError
from service.keeping.backup import make_backup, restore_backup

app = typer.Typer()


@app.command("backup")
def backup(
    context: typer.Context,
    target: Annotated[Path, typer.Argument(help="The file to write, such as store.zip.")],
    as_json: Json = False,
) -> None:
    """Write one file that holds everything, while others go on working."""
    target.parent.mkdir(parents=True, exist_ok=True)
    with at_desk(context).desk() as desk, show_progress(open_console()) as tell:
        made = make_backup(desk, target, on_progress=tell)
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
