"""The commands of mappings: which heading of a museum's own table fills which field."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from service.cards.words import count, write_date
from service.cli.at_desk import By, Json, answer, at_desk
from service.errors import MissingSourceError, UnusableMappingError
from service.records.mapping.document import mapping_data, read_mapping_file, write_mapping_file
from service.store.kept.mappings import (
    SavedMapping,
    forget_mapping,
    list_mappings,
    load_mapping,
    save_mapping,
)
from service.store.open import reading, writing

app = typer.Typer()
group = typer.Typer(
    no_args_is_help=True, help="How your own headings are read: list, show, save, forget."
)
app.add_typer(group, name="mappings")

Name = Annotated[str, typer.Argument(help="The name of the mapping.")]


@group.command("list")
def list_(context: typer.Context, as_json: Json = False) -> None:
    """List the mappings that are saved, the latest first."""
    with at_desk(context).store() as engine, reading(engine) as connection:
        found = list_mappings(connection)
    lines = list(map(_line, found)) or ["No mapping is saved."]
    answer({"mappings": list(map(_data, found))}, lines, as_json=as_json)


@group.command("show")
def show(context: typer.Context, name: Name, as_json: Json = False) -> None:
    """Show a mapping as the file that `save` reads."""
    with at_desk(context).store() as engine, reading(engine) as connection:
        found = load_mapping(connection, name)
    answer(_data(found), [write_mapping_file(found.mapping).rstrip()], as_json=as_json)


@group.command("save")
def save(
    context: typer.Context,
    file: Annotated[Path, typer.Argument(help="A TOML file; README shows one.")],
    name: Annotated[str, typer.Option("--name", help="Its name; else that of the file.")] = "",
    by: By = "",
    as_json: Json = False,
) -> None:
    """Save a mapping; tables with just the headings it names are then read by it."""
    if not file.is_file():
        raise MissingSourceError(str(file), reason="there is no such file")
    called = name or file.stem
    mapping, wrong = read_mapping_file(file.read_bytes(), name=file.name)
    if wrong:
        raise UnusableMappingError(called, reasons=[one.message for one in wrong])
    at = at_desk(context)
    with at.store() as engine, writing(engine) as connection:
        is_changed = save_mapping(connection, called, mapping, stamp=at.stamp(by))
        found = load_mapping(connection, called)
    line = _line(found) if is_changed else f"{called}: nothing has changed."
    answer({**_data(found), "changed": is_changed}, [line], as_json=as_json)


@group.command("forget")
def forget(context: typer.Context, name: Name, by: By = "", as_json: Json = False) -> None:
    """Take a mapping away; what was read by it stays."""
    at = at_desk(context)
    with at.store() as engine, writing(engine) as connection:
        forget_mapping(connection, name, stamp=at.stamp(by))
    answer({"forgotten": name}, [f"{name} is forgotten."], as_json=as_json)


def _data(found: SavedMapping) -> dict[str, object]:
    stamp = found.stamp
    data = {"name": found.name, "by": stamp.actor, "at": stamp.at}
    return {**data, "mapping": mapping_data(found.mapping)}


def _line(found: SavedMapping) -> str:
    mapping, stamp = found.mapping, found.stamp
    used = count(len(mapping.headings), "heading")
    saved = f"saved by {stamp.actor} on {write_date(stamp.at.date())}"
    return f"{found.name}: {mapping.table}, {used} used, {len(mapping.ignored)} ignored; {saved}"
