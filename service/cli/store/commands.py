"""The group of commands that keep a store."""

from __future__ import annotations

import typer

from service.cli.store import care, finding, intake, packing, papers, printing, rounds, truth
from service.cli.store.around import mappings, photo, undo

store_app = typer.Typer(
    no_args_is_help=True,
    help="Keep records and printed cards: take in, find, pack, print, replace.",
)
for part in (
    intake,
    undo,
    mappings,
    photo,
    finding,
    packing,
    printing,
    truth,
    rounds,
    papers,
    care,
):
    store_app.add_typer(part.app)
