"""Tests for the one place that builds real things."""

from __future__ import annotations

from pathlib import Path

import pytest

import service.wiring
from service.errors import ConfigError
from service.pages.page import TextStyle
from service.wiring import open_workshop


def test_workshop_measures_and_knows_its_folder(tmp_path: Path) -> None:
    """The workshop has a ruler that works and keeps thumbnails below the data folder."""
    with open_workshop(tmp_path) as workshop:
        assert workshop.ruler.width_mm("1987.412.3", TextStyle(10.0)) > 10
        assert workshop.cache_folder.is_relative_to(tmp_path)


def test_missing_fonts_are_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A tree without its fonts refuses to start instead of printing with others."""
    monkeypatch.setattr(service.wiring, "FONTS_CONF", tmp_path / "fonts.conf")
    with pytest.raises(ConfigError), open_workshop(tmp_path):
        pass
