from __future__ import annotations

from pathlib import Path

from service.records.mapping.document import write_mapping_file
from tests.cli.store.conftest import Ask, Say
from tests.records.mapping.made import MAPPING, TABLE


def test_a_mapping_is_saved_shown_used_and_forgotten(ask: Ask, say: Say, tmp_path: Path) -> None:
    """The whole way of a mapping, from its file to an import by it."""
    file, table = tmp_path / "ours.toml", tmp_path / "export.csv"
    file.write_text(write_mapping_file(MAPPING), "utf-8")
    table.write_text(TABLE, "utf-8")
    assert ask("mappings", "list") == {"mappings": []}
    assert ask("mappings", "save", file)["changed"] is True
    assert ask("mappings", "save", file)["changed"] is False
    _, words = say("mappings", "list")
    assert "ours: objects, 5 headings used, 1 ignored; saved by Ada Quill on" in words
    _, shown = say("mappings", "show", "ours")
    assert '"Benennung" = "title"' in shown
    assert ask("import", table, "--preview")["objects"]["new"] == ["1931.14.2", "PMM.77.3"]
    taken = ask("import", table, "--mapping", "ours")
    assert "mapping-used" in {one["code"] for one in taken["findings"]}
    assert ask("mappings", "forget", "ours") == {"forgotten": "ours"}
    assert say("import", table, "--mapping", "ours")[0] == 3


def test_a_file_that_cannot_be_used_is_refused(say: Say, tmp_path: Path) -> None:
    """Each reason is told; so is a file that is not there."""
    file = tmp_path / "ours.toml"
    file.write_text('[headings]\n"A" = "title"\n"B" = "title"\n', "utf-8")
    code, words = say("mappings", "save", file, "--name", "x")
    assert code == 2
    assert "both to be title" in words
    assert say("mappings", "save", tmp_path / "none.toml")[0] == 2
