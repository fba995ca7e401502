from __future__ import annotations

import json
from pathlib import Path

from tests.cli.store.conftest import ONE_BOX, Ask, Say

SPIKE = "1931.14.7"


def test_an_import_is_taken_back(filled: Ask, say: Say, tmp_path: Path) -> None:
    """First seen, then done; a second time there is nothing, and the undo can be undone."""
    records = json.loads(ONE_BOX.read_text("utf-8"))
    records["objects"][1]["title"] = "Fid, boxwood"
    records["objects"].append({"object_number": "PMM.9.9", "title": "Jug"})
    changed = tmp_path / "changed.json"
    changed.write_text(json.dumps(records), "utf-8")
    number = filled("import", changed)["import"]
    seen = filled("undo-import", number, "--preview")
    assert seen["back"] == [{"kind": "object", "number": SPIKE}]
    assert seen["removed"] == [{"kind": "object", "number": "PMM.9.9"}]
    assert "Fid" in say("show", SPIKE)[1]
    code, words = say("undo-import", number)
    assert code == 0
    assert f"object {SPIKE} goes back" in words
    assert f"store undo-import {number + 1} would take this back" in words
    assert "Marlinspike" in say("show", SPIKE)[1]
    assert "There was nothing to take back." in say("undo-import", number)[1]
    assert filled("undo-import", number + 1)["import"] == number + 2
    listed = filled("imports")["imports"]
    assert [(one["import"], one["undoes"]) for one in listed[:2]] == [
        (number + 2, number + 1),
        (number + 1, number),
    ]
    assert f"taken back by import {number + 1}" in say("imports")[1]


def test_what_is_not_there_is_told(say: Say) -> None:
    """By the code of what is not found."""
    assert say("undo-import", 7)[0] == 3
    assert "Nothing was taken in." in say("imports")[1]
