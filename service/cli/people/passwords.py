"""Names and passwords as the commands ask for them; no question where nobody could answer."""

from __future__ import annotations

import sys

import typer


def ask_name(given: str) -> str:
    """Take the name that was given, or ask for one at a terminal.

    Raises:
        BadParameter: When none was given and nobody is there to ask.
    """
    if given:
        return given
    if not sys.stdin.isatty():
        message = "name the user, and send the password on standard input"
        raise typer.BadParameter(message)
    return str(typer.prompt("Your name, as it will stand in the history"))


def ask_password() -> str:
    """Ask for a new password twice at a terminal; else read the first line of standard input.

    Raises:
        BadParameter: When no line comes.
    """
    if sys.stdin.isatty():
        words = "Password, at least 12 characters"
        return str(typer.prompt(words, hide_input=True, confirmation_prompt=True))
    line = sys.stdin.readline()
    if not line:
        message = "send the password on standard input, as its first line"
        raise typer.BadParameter(message)
    return line.removesuffix("\n").removesuffix("\r")
