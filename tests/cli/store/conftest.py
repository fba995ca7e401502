from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from service.cli.main import run

ONE_BOX = Path(__file__).parents[3] / "sample_records" / "one_box.json"

Answer = dict[str, Any]
Ask = Callable[..., Answer]
Say = Callable[..., tuple[int, str]]


@pytest.fixture
def say(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Say:
    """Give what runs a command of the store in a data folder of its own: exit code and words."""
    monkeypatch.setenv("UNDERLID_DATA", str(tmp_path / "data"))
    monkeypatch.setenv("UNDERLID_ACTOR", "Ada Quill")
    monkeypatch.setenv("UNDERLID_PROCESSES", "1")

    def do(*arguments: object) -> tuple[int, str]:
        capsys.readouterr()
        code = run(["store", *map(str, arguments)])
        said = capsys.readouterr()
        return code, said.out + said.err

    return do


@pytest.fixture
def ask(say: Say) -> Ask:
    """Give what runs a command and reads its JSON; it must end well."""

    def do(*arguments: object) -> Answer:
        code, said = say(*arguments, "--json")
        assert code == 0, said
        answer = json.loads(said)
        assert isinstance(answer, dict)
        return answer

    return do


@pytest.fixture
def filled(ask: Ask) -> Ask:
    """Give the same with one box taken in."""
    ask("import", ONE_BOX)
    return ask
