from __future__ import annotations

import io

import pytest
import typer

from service.cli.people.passwords import ask_name, ask_password


class _Terminal(io.StringIO):
    def isatty(self) -> bool:
        """Say that somebody sits there."""
        return True


@pytest.mark.parametrize(
    "typed", ["two words\n", "two words\r\n", "two words", "two words\nmore\n"]
)
def test_the_first_line_is_the_password(monkeypatch: pytest.MonkeyPatch, typed: str) -> None:
    """However the line ends; spaces in it belong to it."""
    monkeypatch.setattr("sys.stdin", io.StringIO(typed))
    assert ask_password() == "two words"


def test_nobody_is_asked_where_nobody_sits(monkeypatch: pytest.MonkeyPatch) -> None:
    """It is said what is missing instead."""
    monkeypatch.setattr("sys.stdin", io.StringIO())
    with pytest.raises(typer.BadParameter, match="standard input"):
        ask_password()
    with pytest.raises(typer.BadParameter, match="name the user"):
        ask_name("")
    assert ask_name("Ada Quill") == "Ada Quill"


def test_at_a_terminal_one_is_asked(monkeypatch: pytest.MonkeyPatch) -> None:
    """For the password twice, and without showing it."""
    asked: list[dict[str, object]] = []

    def prompt(words: str, **options: object) -> str:
        asked.append({"words": words, **options})
        return "typed"

    monkeypatch.setattr("sys.stdin", _Terminal())
    monkeypatch.setattr("typer.prompt", prompt)
    assert (ask_name(""), ask_password()) == ("typed", "typed")
    assert asked[1]["hide_input"] is asked[1]["confirmation_prompt"] is True
