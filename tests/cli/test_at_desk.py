"""Tests for what every command of the store needs."""

from __future__ import annotations

import getpass
from datetime import date
from pathlib import Path

import pytest
import typer

from service.cli.at_desk import AtDesk, now, read_day
from service.config import Settings
from service.errors import ConfigError


def test_the_name_comes_from_the_nearest_place(tmp_path: Path) -> None:
    """As named with the command, else as set, else the user of this machine."""
    plain, named = Settings(data=tmp_path), Settings(data=tmp_path, actor="Stores team")
    assert AtDesk(named).stamp("Ada Quill").actor == "Ada Quill"
    assert AtDesk(named).stamp("").actor == "Stores team"
    assert AtDesk(plain).stamp("").actor == getpass.getuser()


def test_moments_have_a_zone() -> None:
    """A moment without its zone could be any."""
    assert now().tzinfo is not None


def test_days_are_written_in_one_way() -> None:
    """A day that could be read the wrong way round is refused."""
    assert read_day("2026-12-01") == date(2026, 12, 1)
    with pytest.raises(typer.BadParameter, match="2026-11-25"):
        read_day("01/12/2026")


def test_a_machine_without_a_user_name_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where the system knows no name the setting that gives one is named."""

    def know_nobody() -> str:
        message = "uid not found"
        raise KeyError(message)

    monkeypatch.setattr(getpass, "getuser", know_nobody)
    with pytest.raises(ConfigError, match="UNDERLID_ACTOR"):
        AtDesk(Settings(data=tmp_path)).stamp("")
