from __future__ import annotations

import os
import re
import signal
import socket
import ssl
import subprocess
import sys
from pathlib import Path

import httpx
import pytest

from service.config import Settings
from service.errors import ConfigError
from service.keeping.sharing.addresses import Names
from service.keeping.sharing.certificate import keep_certificate
from service.store.migrations.upgrade import upgrade_store
from service.store.open import open_folder
from service.web.server import address_of, open_server
from service.web.store.counter import read_clock
from tests.web.sent import ONE_BOX, running
from tests.web.store.people.people import ADA, PASSWORD, add_people

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


@pytest.mark.parametrize("host", ["127.0.0.1", "127.0.0.2"])
def test_the_store_is_answered_on_this_machine(tmp_path: Path, host: str) -> None:
    """On any address that only this machine reaches, without any user."""
    with open_server(Settings(host=host, port=0, data=tmp_path)):
        pass
    assert (tmp_path / "store.db").exists()


def test_no_answer_waits_for_an_acknowledgement(tmp_path: Path) -> None:
    """What is written goes out at once: connections have the option of the listener."""
    with (
        open_server(Settings(port=0, data=tmp_path)) as (_, listener),
        socket.create_connection(listener.getsockname()),
    ):
        near, _ = listener.accept()
        with near:
            assert near.getsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY)


def test_a_store_without_users_is_not_shared(tmp_path: Path) -> None:
    """Whoever comes by a proxy would be taken for this machine."""
    settings = Settings(port=0, data=tmp_path, behind_proxy=True, allowed_hosts="pc")
    with pytest.raises(ConfigError, match="no user yet"), open_server(settings):
        pass


def _add_people(folder: Path) -> None:
    engine = open_folder(folder)
    upgrade_store(engine)
    engine.dispose()
    add_people(folder)


@pytest.mark.slow
def test_others_come_in_over_https(tmp_path: Path) -> None:
    """With the certificate alone trusted, by its names alone, with a cookie for this host alone."""
    made = keep_certificate(tmp_path, Names(("pc",), ()), now=read_clock())
    _add_people(tmp_path)
    settings = Settings(
        port=0,
        data=tmp_path,
        certificate=str(made.path),
        key=str(made.key_path),
        allowed_hosts="pc",
    )
    trusted = ssl.create_default_context(cafile=str(made.path))
    trusted.check_hostname = False
    with (
        open_server(settings) as (server, listener),
        running(server, listener) as plain,
        httpx.Client(
            base_url=address_of(listener, is_secure=True), verify=trusted, trust_env=False
        ) as client,
    ):
        # The thread needs a moment until it shakes hands.
        with pytest.raises(httpx.TransportError):
            plain.get("/health")
        host = {"Host": f"pc:{listener.getsockname()[1]}"}
        assert client.get("/health", headers=host).status_code == 200
        assert client.get("/health", headers={"Host": "other"}).status_code == 421
        body = {"name": ADA, "password": PASSWORD}
        reply = client.post("/api/sessions", json=body, headers=host)
        cookie = reply.headers["set-cookie"]
    assert cookie.startswith("__Host-underlid=")
    assert "; Secure" in cookie
    assert "; Path=/" in cookie


@pytest.mark.parametrize(("host", "shown"), [("127.0.0.1", "127.0.0.1"), ("::1", "[::1]")])
def test_address_is_what_people_type(host: str, shown: str) -> None:
    """The address can be pasted, on the older and the newer protocol, with or without https."""
    family = socket.AF_INET6 if ":" in host else socket.AF_INET
    try:
        listener = socket.create_server((host, 0), family=family)
    except OSError:
        pytest.skip("This machine has no such address.")
    with listener:
        assert re.fullmatch(rf"http://{re.escape(shown)}:\d+", address_of(listener))
        assert address_of(listener, is_secure=True).startswith(f"https://{shown}:")


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
