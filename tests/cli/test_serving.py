from __future__ import annotations

import io
import socket
from pathlib import Path

import pytest
from rich.console import Console

from service.cli.serving import serve_api, who_can_reach
from service.config import Settings
from service.errors import ConfigError


@pytest.mark.parametrize("host", ["127.0.0.1", "localhost", "::1", "127.0.0.2"])
def test_this_machine_is_named(host: str) -> None:
    """On a loopback address it says that nobody else can reach it, unless a proxy does."""
    assert "this machine only" in who_can_reach(Settings(host=host))
    assert "has to sign in" in who_can_reach(Settings(host=host, behind_proxy=True))


@pytest.mark.parametrize("host", ["0.0.0.0", "192.0.2.1", "prints.example", "::"])  # noqa: S104
def test_others_have_to_sign_in(host: str) -> None:
    """Anywhere else it says that others reach it, and what they have to do."""
    assert "has to sign in" in who_can_reach(Settings(host=host))


def test_nothing_is_said_before_it_listens(tmp_path: Path) -> None:
    """An address is only told once it is ours."""
    said = io.StringIO()
    with socket.create_server(("127.0.0.1", 0)) as taken:
        settings = Settings(port=taken.getsockname()[1], data=tmp_path)
        with pytest.raises(ConfigError):
            serve_api(Console(file=said), settings)
    assert said.getvalue() == ""
