"""Tests for what the service shows when it is started without a command."""

from __future__ import annotations

import io
import shlex
from pathlib import Path

import pytest
from rich.console import Console

import service.cli.demo
from service.cli.demo import show_demo
from service.cli.main import run
from service.config import Settings
from service.store.open import STORE_FILE

ONE_BOX = Path(__file__).parents[2] / "sample_records" / "one_box.json"


@pytest.mark.print
@pytest.mark.slow
def test_the_demo_begins_anew_in_a_store_of_its_own(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """It never touches the store of the museum, and a second start has the first run again."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(service.cli.demo, "DEMO", ONE_BOX)
    data = tmp_path / "data"
    elsewhere = f"sqlite:///{tmp_path / 'museum.db'}"
    settings = Settings(data=data, database=elsewhere, files="s3://museum", processes=1)
    for _ in range(2):
        assert show_demo(Console(file=io.StringIO()), settings) == 0
    assert sorted(path.name for path in data.iterdir()) == ["demo"]
    assert not (tmp_path / "museum.db").exists()
    assert (data / "demo" / STORE_FILE).is_file()
    monkeypatch.setenv("UNDERLID_DATA", str(data))
    capsys.readouterr()
    assert run(["store", "--demo", "runs"]) == 0
    assert capsys.readouterr().out.startswith("1 ")


def test_a_demo_that_was_not_made_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """An empty store in its place would say that all its cards are right."""
    monkeypatch.setenv("UNDERLID_DATA", str(tmp_path / "data"))
    assert run(["store", "--demo", "reprints"]) == 2
    assert "the demo has no store yet" in " ".join(capsys.readouterr().err.split())
    assert not (tmp_path / "data").exists()


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_the_demo_shows_how_a_box_is_repacked(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """What it says to type, typed: both boxes are on the reprint list, and their cards are made."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("UNDERLID_DATA", str(tmp_path / "data"))
    assert run([]) == 0
    shown = [line.strip() for line in capsys.readouterr().out.splitlines()]
    calls = [shlex.split(line)[3:] for line in shown if "store --demo" in line]
    assert [call[2] for call in calls] == ["move", "reprints", "print"]
    assert [run(call) for call in calls] == [0, 0, 0]
    said = capsys.readouterr().out
    assert "1987.412.9 added" in said
    assert "1987.412.9 taken out" in said
    assert "Run 2: 8 cards." in said
