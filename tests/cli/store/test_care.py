"""Tests for backup and restore."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.cli.store.conftest import Ask, Say


def test_a_backup_brings_everything_back(
    filled: Ask, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, say: Say
) -> None:
    """Restored into another data folder the store answers as before."""
    filled("backup", tmp_path / "store.zip")
    monkeypatch.setenv("UNDERLID_DATA", str(tmp_path / "other"))
    filled("restore", tmp_path / "store.zip")
    assert filled("find", "marlin")["objects"][0]["object_number"] == "1931.14.7"
    code, words = say("restore", tmp_path / "store.zip")
    assert (code, "a store in it already" in " ".join(words.split())) == (2, True)


def test_a_backup_goes_where_it_will_be_found(
    filled: Ask, say: Say, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Into the folder that is named; never beside a database that is set."""
    packed, folder = tmp_path / "new" / "store.zip", tmp_path / "other"
    filled("backup", packed)
    monkeypatch.setenv("UNDERLID_DATABASE", f"sqlite:///{tmp_path / 'elsewhere.db'}")
    code, words = say("restore", packed)
    assert (code, "UNDERLID_DATABASE" in words) == (78, True)
    assert filled("restore", packed, "--data", folder)["data"] == str(folder)
    assert (folder / "store.db").is_file()
