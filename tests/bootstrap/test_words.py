"""How the set-up speaks, asks and runs."""

from __future__ import annotations

import sys

import pytest

from service.bootstrap.words import StoppedError, ask, run, say, shown, succeeds
from tests.bootstrap.conftest import Tree


def test_speaks_on_standard_error(capfd: pytest.CaptureFixture[str]) -> None:
    """Neither its own words nor those of a command it runs mix with a result."""
    say("One.")
    run([sys.executable, "-c", "print('Two.')"])
    assert capfd.readouterr() == ("", "One.\nTwo.\n")


def test_commands_are_shown_as_typed() -> None:
    """A command can be copied from the screen as it stands."""
    assert shown(["dpkg-deb", "-x", "a b.deb"]) == "dpkg-deb -x 'a b.deb'"


def test_agreement_given_beforehand_asks_nobody() -> None:
    """With --yes there is no question, even where nobody could answer."""
    ask("Go on?", agreed=True)


def test_nobody_to_ask_stops(tree: Tree) -> None:
    """Without a terminal the set-up stops with words and never waits."""
    child = tree.python("-c", "from service.bootstrap.words import ask; ask('?', agreed=False)")
    assert "there is no terminal to ask at. Add --yes to agree." in child.stderr


@pytest.mark.parametrize(("answer", "code"), [("y", 0), ("Yes", 0), ("n", 1), ("", 1)])
def test_only_yes_is_agreement(tree: Tree, answer: str, code: int) -> None:
    """At a terminal, only a plain yes goes on; Enter alone does not."""
    script = (
        "import os, pty, sys\n"
        "from service.bootstrap.words import ask\n"
        "main, terminal = pty.openpty()\n"
        "os.dup2(terminal, 0)\n"
        f"os.write(main, {answer!r}.encode() + b'\\n')\n"
        "ask('Go on?', agreed=False)\n"
    )
    assert tree.python("-c", script).returncode == code


def test_failing_command_stops() -> None:
    """A command that fails stops the set-up and is named."""
    with pytest.raises(StoppedError, match=r"This failed: .* -c 'exit\(3\)'"):
        run([sys.executable, "-c", "exit(3)"])


def test_absent_program_is_no_success(capfd: pytest.CaptureFixture[str]) -> None:
    """A program that is not there is said and counts as failed."""
    assert not succeeds(["no-such-program"])
    assert capfd.readouterr().err == "no-such-program: No such file or directory\n"


def test_variables_are_added(capfd: pytest.CaptureFixture[str]) -> None:
    """A command gets the variables it is given beside those there are."""
    script = "import os; print(os.environ['PIP_CERT'], 'PATH' in os.environ)"
    run([sys.executable, "-c", script], variables={"PIP_CERT": "bundle"})
    assert capfd.readouterr().err == "bundle True\n"
