"""How the set-up speaks, asks, and runs what it named."""

from __future__ import annotations

import os
import shlex
import subprocess
import sys
from collections.abc import Mapping, Sequence


class StoppedError(Exception):
    """Raised anywhere in the set-up when it cannot go on; holds what to tell the reader."""


def say(text: str) -> None:
    """Print to standard error, which no command uses for its results."""
    print(text, file=sys.stderr, flush=True)


def is_root() -> bool:
    """Tell whether this process may change the system; never on Windows."""
    return hasattr(os, "geteuid") and os.geteuid() == 0


def shown(command: Sequence[str]) -> str:
    """Write a command the way a person would type it."""
    return shlex.join(command)


def ask(question: str, *, agreed: bool) -> None:
    """Go on only when the reader agrees, now or beforehand.

    Raises:
        StoppedError: when the answer is no, or when there is nobody to ask.
    """
    if agreed:
        return
    if not sys.stdin.isatty():
        message = "Nothing was installed: there is no terminal to ask at. Add --yes to agree."
        raise StoppedError(message)
    if input(f"{question} [y/N] ").strip().lower() not in {"y", "yes"}:
        message = "Nothing was installed."
        raise StoppedError(message)


def run(command: Sequence[str], *, variables: Mapping[str, str] | None = None) -> None:
    """Run one command of the set-up, its own output on standard error.

    Raises:
        StoppedError: when the command cannot be started or fails.
    """
    if not succeeds(command, variables=variables):
        message = f"This failed: {shown(command)}"
        raise StoppedError(message)


def succeeds(command: Sequence[str], *, variables: Mapping[str, str] | None = None) -> bool:
    """Run one command and tell whether it ended well."""
    environment = {**os.environ, **(variables or {})}
    try:
        return subprocess.call(command, stdout=sys.stderr.fileno(), env=environment) == 0
    except OSError as error:
        say(f"{command[0]}: {error.strerror}")
        return False
