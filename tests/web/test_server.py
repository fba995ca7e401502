from __future__ import annotations

import os
import re
import signal
import socket
import subprocess
import sys
from pathlib import Path

import httpx
import pytest

from service.config import Settings
from service.errors import ConfigError
from service.web.server import address_of, open_server
from tests.web.sent import ONE_BOX

ROOT = Path(__file__).parents[2]


def test_taken_address_is_told(tmp_path: Path) -> None:
    """A port that is in use stops the start with the setting's name."""
    with socket.create_server(("127.0.0.1", 0)) as taken:
        settings = Settings(port=taken.getsockname()[1], data=tmp_path)
        with pytest.raises(ConfigError, match="UNDERLID_PORT"), open_server(settings):
            pass


def test_foreign_address_is_told(tmp_path: Path) -> None:
    """An address that is not this machine's stops the start (RFC 5737)."""
    settings = Settings(host="192.0.2.1", port=0, data=tmp_path)
    with pytest.raises(ConfigError, match="UNDERLID_HOST"), open_server(settings):
        pass


@pytest.mark.parametrize(("host", "is_there"), [("127.0.0.1", True), ("127.0.0.2", False)])
def test_the_store_is_answered_on_this_machine_only(
    tmp_path: Path, host: str, *, is_there: bool
) -> None:
    """As long as there are no users, another address has no store behind it."""
    with open_server(Settings(host=host, port=0, data=tmp_path)):
        pass
    assert (tmp_path / "store.db").exists() is is_there


@pytest.mark.parametrize(("host", "shown"), [("127.0.0.1", "127.0.0.1"), ("::1", "[::1]")])
def test_address_is_what_people_type(host: str, shown: str) -> None:
    """The address can be pasted, on the older and the newer protocol."""
    family = socket.AF_INET6 if ":" in host else socket.AF_INET
    try:
        listener = socket.create_server((host, 0), family=family)
    except OSError:
        pytest.skip("This machine has no such address.")
    with listener:
        assert re.fullmatch(rf"http://{re.escape(shown)}:\d+", address_of(listener))


@pytest.mark.slow
@pytest.mark.skipif(sys.platform == "win32", reason="Windows has no such signals")
@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGINT])
def test_signal_ends_everything(tmp_path: Path, number: signal.Signals) -> None:
    """Told to stop, the service leaves with 0 and no press stays behind."""
    command = [sys.executable, "-m", "service", "serve", "--port", "0"]
    environment = {**os.environ, "UNDERLID_DATA": str(tmp_path)}  # noqa: TID251 - handed on
    with subprocess.Popen(
        command, cwd=ROOT, env=environment, stderr=subprocess.PIPE, text=True
    ) as process:
        assert process.stderr is not None
        said = process.stderr.readline()
        found = re.search(r"http://\S+", said)
        assert found is not None, said or process.wait()
        with ONE_BOX.open("rb") as records:
            reply = httpx.post(
                f"{found[0]}/api/check", files={"records": records}, timeout=50, trust_env=False
            )
        assert reply.status_code == 200
        process.send_signal(number)
        # The end of the pipe comes when the last process that holds it is gone.
        rest = process.stderr.read()
        assert process.wait() == 0
    assert "Traceback" not in rest
