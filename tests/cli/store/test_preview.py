"""Tests for the words and the data of a preview."""

from __future__ import annotations

import json
from pathlib import Path

from tests.cli.store.conftest import ONE_BOX, Ask, Say


def _repacked(folder: Path) -> Path:
    """Write the sample with its box packed otherwise, and a second box for what goes out of it."""
    records = json.loads(ONE_BOX.read_text("utf-8"))
    (packing,) = records["packings"]
    packing["reason"] = "Survey"
    going, moving, *_ = packing["places"]
    packing["places"].remove(going)
    moving["layer"] = "9"
    packing["places"].append({"object_number": "X.900", "layer": "2"})
    records["objects"].append({"object_number": "X.900", "title": "Thimble"})
    records["containers"].append({"container_number": "B-042"})
    records["packings"].append({"container_number": "B-042", "places": [going]})
    path = folder / "repacked.json"
    path.write_text(json.dumps(records), "utf-8")
    return path


def test_a_preview_says_how_a_box_is_packed_anew(filled: Ask, say: Say, tmp_path: Path) -> None:
    """What comes in, goes out and where to, moves, and why; nothing of it is done."""
    path = _repacked(tmp_path)
    first, second = (each["object_number"] for each in _places())
    answer = filled("import", path, "--preview")
    assert (answer["packings"]["changed"], answer["packings"]["new"]) == (["B-027"], ["B-042"])
    (repacked,) = answer["repacked"].values()
    told = {each["object_number"]: each for each in repacked["places"]}
    assert {number: each["course"] for number, each in told.items()} == {
        first: "out",
        second: "moved",
        "X.900": "in",
    }
    assert (told[first]["after"], told[first]["other"]) == (None, "B-042")
    assert told[second]["after"]["layer"] == 9
    assert repacked["packed"]["after"]["reason"] == "Survey"
    words = say("import", path, "--preview")[1]
    assert f"  B-027: {first} goes out, to B-042\n" in words
    assert f"  B-027: {second} moves from layer 1" in words
    assert "  B-027: X.900 comes in, layer 2\n" in words
    assert "becomes Survey\n" in words
    assert filled("show", "B-027")["revision"] == 1


def test_another_note_is_told(filled: Ask, say: Say, tmp_path: Path) -> None:
    """How a thing lies is told beside its number, and what is taken in is unchanged then."""
    records = json.loads(ONE_BOX.read_text("utf-8"))
    place = records["packings"][0]["places"][0]
    place["note"] = "wrapped anew"
    path = tmp_path / "noted.json"
    path.write_text(json.dumps(records), "utf-8")
    words = say("import", path, "--preview")[1]
    assert f"{place['object_number']} note: " in words
    assert "becomes wrapped anew" in words
    filled("import", path)
    assert filled("import", path, "--preview")["repacked"] == {}


def _places() -> list[dict[str, str]]:
    places: list[dict[str, str]] = json.loads(ONE_BOX.read_text("utf-8"))["packings"][0]["places"]
    return places[:2]
