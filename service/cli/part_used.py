"""Going on with a part-used sheet: where the next run starts, and what it leaves."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import typer

from service.keeping.printing.printers_file import keep_saved, load_saved
from service.pipeline.options import Outcome, PrintOptions
from service.sheets.printers.used_sheet import next_start, remember


def go_on(folder: Path, options: PrintOptions) -> PrintOptions:
    """Give the options with the start that is remembered; positions that were typed win.

    Raises:
        BadParameter: When the stock is not named, or several kinds of card would share one sheet.
    """
    if options.stock is None or len(options.kinds) != 1:
        msg = "it needs one --stock and one --kind, so that one sheet is meant"
        raise typer.BadParameter(msg, param_hint="--continue")
    if options.start_position != 1 or options.skipped:
        return options
    start = next_start(load_saved(folder).used_sheets, options.stock)
    return replace(options, start_position=start.position, skipped=start.skipped)


def remember_rest(folder: Path, outcome: Outcome) -> str:
    """Keep what is left of the last sheet of a run, and say it."""
    (file,) = outcome.files
    saved = load_saved(folder)
    used = remember(saved.used_sheets, file.stock.name, file.left_over)
    keep_saved(folder, replace(saved, used_sheets=used))
    if file.left_over is None:
        return f"Nothing is left of the last sheet of {file.stock.name}."
    left = file.stock.positions - len(file.left_over.positions)
    return (
        f"Remembered: {left} positions of the last sheet of {file.stock.name} are left. Should it"
        f' not be printed after all: calibrate forget --sheet "{file.stock.name}"'
    )
