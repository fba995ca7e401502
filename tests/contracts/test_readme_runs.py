"""README's command blocks run as they stand, FOLDER being the demo collection."""

from __future__ import annotations

import shlex
import shutil
import subprocess
from pathlib import Path

import httpx
import pytest

from service.cli.main import run
from service.config import Settings
from service.web.server import open_server
from tests.contracts.sources import ROOT
from tests.contracts.test_documents import service_calls, shell_lines
from tests.web.sent import running

SAMPLES = ROOT / "sample_records"
PRINTING = [call for call in service_calls() if call[:1] in (["print"], ["check"])]


@pytest.fixture(scope="module")
def data_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Keep the thumbnails of one command for the next."""
    return tmp_path_factory.mktemp("data")


def test_there_are_commands_to_run() -> None:
    """The list is not empty by some slip of the parser."""
    assert {call[0] for call in PRINTING} == {"check", "print"}


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
@pytest.mark.parametrize("call", PRINTING, ids=" ".join)
def test_commands_do_what_they_are_shown_for(
    call: list[str], tmp_path: Path, data_folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Each command ends well, and one that prints leaves its PDF where it says."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("UNDERLID_DATA", str(data_folder))
    demo = str(SAMPLES / "port_merrow")
    assert run([demo if word == "FOLDER" else word for word in call]) == 0
    if call[0] == "print":
        assert list(tmp_path.rglob("*.pdf"))


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_a_store_can_be_tried_as_shown(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """After the first start the commands of a store end well one after another."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("UNDERLID_DATA", str(tmp_path / "data"))
    demo = str(SAMPLES / "port_merrow")
    calls = [call for call in service_calls() if call[:1] == ["store"]]
    shown = [[demo if word == "FOLDER" else word for word in call] for call in calls]
    assert run([]) == 0
    assert [call for call in shown if run(call) != 0] == []
    assert len(calls) == 9
    assert list((tmp_path / "out").glob("*.pdf"))


@pytest.mark.print
@pytest.mark.slow
def test_the_request_gives_its_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The example for programs gives a PDF, sent by curl where there is one."""
    (line,) = (line for line in shell_lines() if line.startswith("curl"))
    monkeypatch.chdir(SAMPLES)
    settings = Settings(port=0, data=tmp_path / "data")
    with open_server(settings) as (server, listener), running(server, listener) as client:
        words = shlex.split(line)
        words[-1] = str(client.base_url.join("/api/render"))
        words[words.index("-o") + 1] = str(tmp_path / "lid.pdf")
        _send(words, client)
    assert (tmp_path / "lid.pdf").read_bytes().startswith(b"%PDF")


def _send(words: list[str], client: httpx.Client) -> None:
    if curl := shutil.which("curl"):
        subprocess.run([curl, "-s", *words[1:]], check=True)
        return
    fields = [word.split("=", 1) for at, word in enumerate(words) if words[at - 1] == "-F"]
    files = [
        (name, (Path(value[1:]).name, Path(value[1:]).read_bytes()))
        for name, value in fields
        if value.startswith("@")
    ]
    data = {name: value for name, value in fields if not value.startswith("@")}
    answer = client.post("/api/render", data=data, files=files)
    Path(words[words.index("-o") + 1]).write_bytes(answer.content)
