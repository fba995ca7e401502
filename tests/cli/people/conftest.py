from __future__ import annotations

import io
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from service.cli.main import run
from service.keeping.sharing import addresses

PASSWORD = "nine lamps by the harbour"  # noqa: S105 - the tests' own

Say = Callable[..., tuple[int, str]]
Ask = Callable[..., dict[str, Any]]


@pytest.fixture
def say(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Say:
    """Give what runs a command in a data folder of its own, with `typed` on standard input."""
    monkeypatch.setenv("UNDERLID_DATA", str(tmp_path / "data"))
    monkeypatch.setenv("UNDERLID_ACTOR", "Ada Quill")
    # The tests reach this machine alone.
    monkeypatch.setattr(addresses, "NOWHERE", ("127.0.0.1", 9))

    def do(*arguments: object, typed: str = "") -> tuple[int, str]:
        monkeypatch.setattr("sys.stdin", io.StringIO(typed))
        capsys.readouterr()
        code = run([str(each) for each in arguments])
        said = capsys.readouterr()
        return code, said.out + said.err

    return do


@pytest.fixture
def ask(say: Say) -> Ask:
    """Give what runs a command and reads its JSON; it must end well."""

    def do(*arguments: object, typed: str = f"{PASSWORD}\n") -> dict[str, Any]:
        code, said = say(*arguments, "--json", typed=typed)
        assert code == 0, said
        answer: dict[str, Any] = json.loads(said)
        return answer

    return do
