"""What every command of the store needs: who acts and when, the desk, and how to answer."""

from __future__ import annotations

import getpass
import json
import time
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, date, datetime
from typing import Annotated

import typer
from rich.console import Console

from service.cli.report import EXIT_FINDINGS
from service.config import PREFIX, Settings
from service.errors import ConfigError
from service.findings import Finding, Severity, worst_severity
from service.keeping.desk import Desk
from service.store.handles import Engine
from service.store.history import Stamp
from service.store.open import STORE_FILE
from service.wiring import open_desk, open_store

Json = Annotated[bool, typer.Option("--json", help="Answer as one JSON document.")]
By = Annotated[str, typer.Option("--by", help="Who does it; the name goes into the history.")]
Why = Annotated[str, typer.Option("--why", help="The reason, which is kept with the packing.")]
Seen = Annotated[
    int | None,
    typer.Option("--revision", help="The revision you have seen; without it the current one."),
]


def settings_of_demo(settings: Settings) -> Settings:
    """Give the settings of the demo, which has a store of its own in the data folder."""
    own = {"data": settings.data / "demo", "database": "", "files": ""}
    return settings.model_copy(update=own)


def own_or_demo(settings: Settings, *, is_demo: bool) -> Settings:
    """Give the settings as they are, or those of the demo where it is asked for.

    Raises:
        BadParameter: When the demo was not made yet.
    """
    return find_demo(settings) if is_demo else settings


def find_demo(settings: Settings) -> Settings:
    """Give the settings of the demo whose store is there.

    Raises:
        BadParameter: When it was not made yet.
    """
    own = settings_of_demo(settings)
    if not (own.data / STORE_FILE).exists():
        message = "the demo has no store yet; `python3 -m service` makes it"
        raise typer.BadParameter(message, param_hint="--demo")
    return own


@dataclass(frozen=True, slots=True)
class AtDesk:
    """The settings of this command; opens what it needs."""

    settings: Settings

    def stamp(self, by: str) -> Stamp:
        """Say who acts and when: as named, as set, or the user of this machine."""
        return Stamp(by or self.settings.actor or _name_user(), now())

    @contextmanager
    def desk(self) -> Iterator[Desk]:
        """Open the store with all that prints."""
        with open_desk(self.settings) as desk:
            yield desk

    @contextmanager
    def store(self) -> Iterator[Engine]:
        """Open the store alone."""
        with open_store(self.settings) as engine:
            yield engine


def _name_user() -> str:
    """Give the name of the user of this machine.

    Raises:
        ConfigError: When the system knows none, as in some containers.
    """
    try:
        return getpass.getuser()
    except (KeyError, OSError, ImportError) as error:
        reason = "this machine has no name for its user, so set it or give --by"
        setting = f"{PREFIX}ACTOR"
        raise ConfigError(setting, reason=reason) from error


def now() -> datetime:
    """Give the moment with the time zone of this machine, for dates are those of the place."""
    return datetime.fromtimestamp(time.time(), tz=UTC).astimezone()


def read_day(text: str) -> date:
    """Read a day written as 2026-11-25.

    Raises:
        BadParameter: When it is written in another way.
    """
    try:
        return date.fromisoformat(text)
    except ValueError as error:
        message = f"{text!r} is no day; write it as 2026-11-25"
        raise typer.BadParameter(message) from error


def open_console() -> Console:
    """Open standard error: what people read while standard output holds the answer."""
    return Console(stderr=True, highlight=False)


def answer(data: Mapping[str, object], lines: Sequence[str], *, as_json: bool) -> None:
    """Answer as one JSON document, or in lines for people."""
    if as_json:
        typer.echo(json.dumps(data, ensure_ascii=False, indent=2, default=str))
    for line in () if as_json else lines:
        typer.echo(line)


def leave(findings: Sequence[Finding]) -> None:
    """End the command: well, or with the exit code of findings that are errors.

    Raises:
        Exit: When there are such findings.
    """
    if worst_severity(findings) is Severity.ERROR:
        raise typer.Exit(EXIT_FINDINGS)


def at_desk(context: typer.Context) -> AtDesk:
    """Give what the group of commands has read."""
    return context.find_object(AtDesk) or _missing()


def _missing() -> AtDesk:
    """Refuse a command that was called outside its group.

    Raises:
        RuntimeError: Always.
    """
    message = "The settings have not been read."
    raise RuntimeError(message)
