"""Tests for packing and repacking from the command line."""

from __future__ import annotations

import json
from pathlib import Path

from tests.cli.store.conftest import Ask, Say


def test_an_object_goes_in_and_out_again(filled: Ask) -> None:
    """Each change is a revision; another place is a change as well."""
    assert filled("pack", "B-027", "X.900", "--layer", 2)["revision"] == 2
    assert filled("pack", "B-027", "X.900", "--layer", 1, "--note", "in tissue")["revision"] == 3
    out = filled("unpack", "B-027", "X.900", "--why", "sent to the studio")
    assert out["revision"] == 4
    assert "X.900" not in out["objects"]


def test_what_is_not_told_of_a_place_stays(filled: Ask) -> None:
    """A note alone changes neither layer nor compartment."""
    filled("pack", "B-027", "X.900", "--layer", 2, "--compartment", "B1")
    filled("pack", "B-027", "X.900", "--note", "in tissue")
    place = filled("show", "B-027")["places"][-1]
    assert (place["object_number"], place["layer"]) == ("X.900", 2)
    assert (place["compartment"], place["note"]) == ("B1", "in tissue")


def test_a_box_with_other_things_in_it_was_not_weighed(
    filled: Ask, say: Say, tmp_path: Path
) -> None:
    """The weight goes, and whoever repacked is asked to weigh again, once."""
    weighed = tmp_path / "containers.json"
    record = {"container_number": "B-027", "gross_weight": "7.4 kg"}
    weighed.write_text(json.dumps({"containers": [record]}), "utf-8")
    filled("import", weighed)
    assert "weigh it again" in say("pack", "B-027", "X.900")[1]
    assert "weigh it again" not in say("pack", "B-027", "X.901")[1]


def test_a_stale_revision_is_refused(filled: Ask, say: Say) -> None:
    """Whoever packs from an older state is told the current one."""
    filled("pack", "B-027", "X.900")
    code, words = say("pack", "B-027", "X.113", "--revision", 1)
    assert code == 3
    assert "is at revision 2" in words


def test_a_move_is_asked_with_one_number(filled: Ask, say: Say) -> None:
    """The container it lies in is found; one that does not exist is told."""
    code, words = say("move", "1931.14.7", "--to", "B-999")
    assert (code, "B-999" in words) == (3, True)
    code, words = say("move", "X.999", "--to", "B-027")
    assert (code, "X.999" in words) == (3, True)
    assert filled("show", "B-027")["revision"] == 1


def test_a_slip_makes_no_revision(filled: Ask, say: Say) -> None:
    """What is out for a while keeps its place, and comes back to it."""
    assert filled("out", "1931.14.7", "--to", "I. Hale", "--due", "2026-12-01")["slip"] == 1
    assert filled("show", "B-027")["out"] == ["1931.14.7"]
    assert filled("show", "B-027")["revision"] == 1
    assert filled("back", "1931.14.7")["container_number"] == "B-027"
    code, words = say("back", "1931.14.7")
    assert (code, "that is out" in words) == (3, True)


def test_a_move_answers_once(filled: Ask, tmp_path: Path) -> None:
    """Both containers stand in one JSON document."""
    filled("import", _write_spare_box(tmp_path))
    left, reached = filled("move", "1931.14.7", "--to", "B-900")["packings"]
    assert (left["container_number"], reached["container_number"]) == ("B-027", "B-900")
    assert "1931.14.7" not in left["objects"]
    assert reached["objects"] == ["1931.14.7"]


def test_parts_go_out_of_the_container_that_is_named(filled: Ask, say: Say, tmp_path: Path) -> None:
    """Where parts lie in two containers the question names the option that answers it."""
    filled("import", _write_spare_box(tmp_path))
    filled("pack", "B-027", "X.900", "--part", "coat")
    filled("pack", "B-900", "X.900", "--part", "hat")
    code, words = say("out", "X.900", "--to", "I. Hale")
    assert (code, "--from" in words) == (2, True)
    out = filled("out", "X.900", "--to", "I. Hale", "--from", "B-900", "--part", "hat")
    assert out["container_number"] == "B-900"


def _write_spare_box(folder: Path) -> Path:
    path = folder / "spare.json"
    path.write_text('{"objects": [], "containers": [{"container_number": "B-900"}]}', "utf-8")
    return path


def test_what_is_packed_badly_is_told_at_once(filled: Ask, say: Say, tmp_path: Path) -> None:
    """Whoever packs hears of it while the box stands open, and again when it is shown."""
    filled("import", _write_wool_and_silver(tmp_path))
    assert filled("pack", "B-900", "X.901")["findings"] == []
    (told,) = filled("pack", "B-900", "X.902")["findings"]
    assert (told["code"], told["where"]) == ("conflicting-materials", "B-900, X.901")
    assert filled("show", "B-900")["findings"] == [told]
    code, words = say("show", "B-900")
    assert (code, "warning B-900, X.901: X.901 (wool) lies with X.902" in words) == (0, True)
    left, reached = filled("move", "X.902", "--to", "B-901")["packings"]
    assert (left["findings"], reached["findings"]) == ([], [])


def _write_wool_and_silver(folder: Path) -> Path:
    path = folder / "two.json"
    path.write_text(
        """{"objects": [{"object_number": "X.901", "materials": "wool"},
        {"object_number": "X.902", "materials": "silver"}],
        "containers": [{"container_number": "B-900"}, {"container_number": "B-901"}]}""",
        "utf-8",
    )
    return path
