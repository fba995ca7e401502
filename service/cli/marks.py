"""The marks command: the specimen of every mark into one file."""

from __future__ import annotations

import json
from pathlib import Path

import typer

from service.cli.printing import copy_whole
from service.config import Settings
from service.pipeline.documents.specimen import print_specimen
from service.wiring import open_workshop


def print_marks(settings: Settings, output: Path, *, paper: str, as_json: bool) -> None:
    """Print the specimen into a file and say so.

    Raises:
        ProofFailedError: When a page does not read back as it should.
    """
    chosen = "Letter" if paper.casefold() == "letter" else "A4"
    with open_workshop(settings.data, processes=settings.processes) as workshop:
        made = print_specimen(workshop, paper=chosen)
        output.parent.mkdir(parents=True, exist_ok=True)
        copy_whole(made, output)
    if as_json:
        typer.echo(json.dumps({"path": str(output), "paper": chosen}))
    else:
        typer.echo(f"{output}: every page was read back. Print it at 100 % on {chosen}.")
