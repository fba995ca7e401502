"""Tests for taking records and photos in."""

from __future__ import annotations

import io
import json
from pathlib import Path

from PIL import Image

from tests.cli.store.conftest import ONE_BOX, Ask, Say


def test_a_preview_changes_nothing(ask: Ask) -> None:
    """What is new is listed, and the store stays empty."""
    answer = ask("import", ONE_BOX, "--preview")
    assert answer["objects"]["new"]
    assert answer["containers"]["new"] == ["B-027"]
    assert ask("find", "B-027")["containers"] == []


def test_the_same_file_twice_changes_nothing(ask: Ask) -> None:
    """The second time everything is unchanged."""
    assert ask("import", ONE_BOX)["summary"]["containers new"] == 1
    again = ask("import", ONE_BOX)["summary"]
    assert again["objects new"] == again["objects changed"] == again["museum"] == 0


def test_a_preview_shows_the_cells_that_differ(filled: Ask, say: Say, tmp_path: Path) -> None:
    """The title as it was and as it will be stand beside the number."""
    records = json.loads(ONE_BOX.read_text("utf-8"))
    records["objects"][1]["title"] = "Fid, boxwood"
    changed = tmp_path / "changed.json"
    changed.write_text(json.dumps(records), "utf-8")
    (difference,) = filled("import", changed, "--preview")["differences"].values()
    assert difference["record"]["after"] == {"title": "Fid, boxwood"}
    _, words = say("import", changed, "--preview")
    assert "1931.14.7 title: Marlinspike" in words
    assert "becomes Fid, boxwood" in words


def test_photos_come_by_their_names(filled: Ask, tmp_path: Path) -> None:
    """A folder of photos is matched, and what fits nothing is told."""
    folder = tmp_path / "photos"
    folder.mkdir()
    stream = io.BytesIO()
    Image.new("RGB", (400, 300), "#808080").save(stream, "JPEG")
    for name in ("1931.14.7_front.jpg", "holiday.jpg"):
        (folder / name).write_bytes(stream.getvalue())
    answer = filled("photos", folder)
    assert (answer["new"], answer["matched"][0]["object_number"]) == (1, "1931.14.7")
    assert "photo-not-named" in {finding["code"] for finding in answer["findings"]}


def test_records_are_handed_on_as_lido(filled: Ask, tmp_path: Path) -> None:
    """The file, read as anybody's, gives the objects again; restricted ones are named and left."""
    restricted = {"object_number": "X.9", "title": "Private", "restricted": True}
    more = tmp_path / "more.json"
    more.write_text(json.dumps({"objects": [restricted]}), "utf-8")
    filled("import", more)
    path = tmp_path / "hand on" / "records.xml"
    answer = filled("export", path)
    assert [finding["code"] for finding in answer["findings"]] == ["not-exported"]
    assert b"Private" not in path.read_bytes()
    filled("import", path)
    plan = filled("import", path, "--preview")
    assert len(plan["objects"]["new"]) == len(plan["objects"]["changed"]) == 0
    assert plan["objects"]["unchanged"] == answer["objects"] > 0
    assert filled("find", "radium")["objects"]


def test_a_source_that_is_not_there_is_told(say: Say) -> None:
    """The path is named, and the exit code says that there was nothing to take."""
    code, words = say("import", "nowhere.csv")
    assert code == 2
    assert "nowhere.csv" in words


def test_photos_beside_tables_are_told(say: Say, tmp_path: Path) -> None:
    """What lies in the folder `photos` is counted, and what fits nothing is told."""
    (tmp_path / "in" / "photos").mkdir(parents=True)
    (tmp_path / "in" / "objects.csv").write_text("object_number,title\nX.1,Fid\n", "utf-8")
    for name in ("X.1_front.jpg", "holiday.jpg"):
        Image.new("RGB", (400, 300), "#808080").save(tmp_path / "in" / "photos" / name)
    code, words = say("import", tmp_path / "in")
    assert (code, "1 new photo, 0 known already" in words) == (0, True)
    assert "holiday.jpg holds no number" in " ".join(words.split())
    answer = json.loads(say("import", tmp_path / "in", "--json")[1])
    assert answer["photos"]["matched"][0]["object_number"] == "X.1"
    assert [finding["code"] for finding in answer["findings"]] == ["photo-not-named"]


def test_nothing_new_is_said(filled: Ask, say: Say) -> None:
    """The same file twice says in words that nothing has changed."""
    filled("show", "B-027")
    assert "nothing has changed" in say("import", ONE_BOX)[1]


def test_rows_that_are_wrong_decide_the_exit_code(say: Say, tmp_path: Path) -> None:
    """The good rows are taken in; a finding that is an error gives exit code 1, as with check."""
    table = tmp_path / "objects.csv"
    table.write_text("object_number,title\nX.1,Fid\n,No number\n", "utf-8")
    assert say("import", table, "--preview")[0] == 1
    assert say("import", table)[0] == 1
    assert say("show", "X.1")[0] == 0
