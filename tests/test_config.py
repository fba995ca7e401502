"""Tests for the settings."""

from __future__ import annotations

from pathlib import Path

import pytest

from service.config import load_settings
from service.errors import ConfigError


def test_defaults_stay_on_this_machine() -> None:
    """Without any setting the service listens on loopback only."""
    settings = load_settings({"PATH": "/bin"})
    assert (settings.host, settings.port) == ("127.0.0.1", 8000)


def test_environment_is_read() -> None:
    """Names with our prefix are settings, whatever else is there."""
    settings = load_settings({"UNDERLID_PORT": "8123", "UNDERLID_DATA": "/srv/d", "HOME": "/"})
    assert (settings.port, settings.data) == (8123, Path("/srv/d"))


@pytest.mark.parametrize(
    ("name", "value"), [("UNDERLID_PROT", "1"), ("UNDERLID_PORT", "x"), ("UNDERLID_PORT", "-1")]
)
def test_slips_are_told(name: str, value: str) -> None:
    """A misspelt name or an unusable value stops the start and is named."""
    with pytest.raises(ConfigError) as caught:
        load_settings({name: value})
    assert caught.value.setting == name
