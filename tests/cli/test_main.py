"""Tests for the commands, each run as a person would."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
SAMPLES = ROOT / "sample_records"


def _run(tmp_path: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    environment = {**os.environ, "UNDERLID_DATA": str(tmp_path / "data"), "PYTHONPATH": str(ROOT)}  # noqa: TID251  A child inherits ours.
    return subprocess.run(
        [sys.executable, "-m", "service.cli.main", *arguments],
        cwd=tmp_path,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
        stdin=subprocess.DEVNULL,
    )


@pytest.mark.print
@pytest.mark.slow
def test_print_writes_one_file(tmp_path: Path) -> None:
    """With one kind and a name ending in .pdf a single file is written and told as JSON."""
    source = str(SAMPLES / "port_merrow")
    done = _run(tmp_path, "print", source, "-o", "x/lids.pdf", "--kind", "cover-card", "--json")
    assert done.returncode == 0, done.stderr
    answer = json.loads(done.stdout)
    assert [file["kind"] for file in answer["files"]] == ["cover-card"]
    assert (tmp_path / "x" / "lids.pdf").read_bytes().startswith(b"%PDF")


def test_check_tells_what_is_wrong(tmp_path: Path) -> None:
    """Checking an untidy export gives its findings as JSON and exit code 1."""
    done = _run(tmp_path, "check", str(SAMPLES / "untidy_export.csv"), "--json")
    findings = json.loads(done.stdout)["findings"]
    assert done.returncode == 1
    assert {"code", "severity", "where", "message", "advice"} == set(findings[0])
    assert "unreadable-weight" in {finding["code"] for finding in findings}


def test_check_in_words(tmp_path: Path) -> None:
    """Without --json the findings are sentences and the last line counts them."""
    done = _run(tmp_path, "check", str(SAMPLES / "untidy_export.csv"))
    assert "errors" in done.stdout
    assert "was not understood" in " ".join(done.stderr.split())


@pytest.mark.print
@pytest.mark.slow
def test_every_kind_is_printed_where_all_are_asked_for(tmp_path: Path) -> None:
    """One box and its clear-lidded like have all kinds but those of garment covers."""
    source = str(SAMPLES / "one_box.json")
    done = _run(tmp_path, "print", source, "-o", "out", "--kind", "all", "--json")
    assert done.returncode == 0, done.stderr
    kinds = {file["kind"] for file in json.loads(done.stdout)["files"]}
    assert kinds == {
        *("lid-card", "end-label", "side-card", "contents-list", "warning-label", "object-tag")
    }


def test_trouble_with_a_file_is_told(tmp_path: Path) -> None:
    """A folder that cannot be made is named, without the inner life of the program."""
    (tmp_path / "file").touch()
    source = str(SAMPLES / "one_box.json")
    done = _run(tmp_path, "store", "import", source)
    assert done.returncode == 0
    done = _run(tmp_path, "store", "export", "file/records.xml")
    assert done.returncode == 2
    assert "file: " in done.stderr
    assert "Traceback" not in done.stderr


@pytest.mark.parametrize(
    ("arguments", "code", "words"),
    [
        (("print", "missing", "-o", "out"), 2, "there is no such file"),
        (("print", "x", "-o", "o", "--kind", "banner"), 2, "There is no card kind"),
        (("print", "x", "-o", "o", "--stock", "A3"), 2, "There is no stock"),
        (("print", "x", "-o", "o", "--printer", "nope"), 2, "There is no printer"),
        (("print", "x", "-o", "o", "--stock", "none.toml"), 2, "cannot be read"),
        (("nonsense",), 2, "No such command"),
    ],
    ids=["no source", "no kind", "no stock", "no printer", "no stock file", "no command"],
)
def test_mistakes_are_told_in_words(
    tmp_path: Path, arguments: tuple[str, ...], code: int, words: str
) -> None:
    """A mistake gives a sentence and an exit code, never a traceback."""
    done = _run(tmp_path, *arguments)
    assert done.returncode == code
    assert words in " ".join(done.stderr.split())
    assert "Traceback" not in done.stderr


def test_unknown_setting_stops_the_start(tmp_path: Path) -> None:
    """A misspelt setting is told with the code for settings."""
    environment = {**os.environ, "UNDERLID_PROT": "1", "PYTHONPATH": str(ROOT)}  # noqa: TID251  As above.
    done = subprocess.run(
        [sys.executable, "-m", "service.cli.main", "check", str(SAMPLES / "scripts.csv")],
        cwd=tmp_path,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )
    assert (done.returncode, "UNDERLID_PROT" in done.stderr) == (78, True)


@pytest.mark.parametrize(
    ("command", "words"),
    [("stocks", "A4 3x7 63.5x38.1"), ("kinds", "lid-card"), ("--help", "check")],
)
def test_lists(tmp_path: Path, command: str, words: str) -> None:
    """Stocks, kinds and help are listed."""
    done = _run(tmp_path, command)
    assert (done.returncode, words in done.stdout) == (0, True)
