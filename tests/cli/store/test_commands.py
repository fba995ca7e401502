"""Tests for the group of commands."""

from __future__ import annotations

from tests.cli.store.conftest import Say


def test_help_names_every_command(say: Say) -> None:
    """The whole circle is there: take in, find, pack, print, attach, replace, look after."""
    _, words = say("--help")
    for name in (
        *("import", "photos", "find", "show", "history", "pack", "unpack", "move", "out", "back"),
        *("print", "spoiled", "runs", "again", "attached", "reprints", "swap-list", "scan"),
        *("imports", "undo-import", "mappings", "photo"),
        *("checked", "due", "check-sheet", "slip", "isolation-label", "backup", "restore"),
    ):
        assert name in words
