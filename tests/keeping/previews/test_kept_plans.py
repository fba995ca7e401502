"""Tests for plans that are kept for a while."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from service.errors import NotFoundError
from service.keeping.previews.kept_plans import KeptPlans


def made(folder: Path, text: bytes) -> Path:
    """Make the folder of a plan with one file."""
    folder.mkdir()
    (folder / "a.pdf").write_bytes(text)
    return folder


def test_a_plan_is_found_by_its_content(tmp_path: Path) -> None:
    """The same files are one plan, kept once; what they were made in is gone."""
    plans = KeptPlans(tmp_path / "plans")
    name = plans.keep(made(tmp_path / "one", b"%PDF 1"))
    assert plans.keep(made(tmp_path / "two", b"%PDF 1")) == name
    assert plans.keep(made(tmp_path / "three", b"%PDF 2")) != name
    assert plans.find(name, "a.pdf").read_bytes() == b"%PDF 1"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["plans"]


@pytest.mark.parametrize("names", [("", "a.pdf"), ("0" * 64, "a.pdf"), ("..", "plans")])
def test_no_other_name_leads_anywhere(tmp_path: Path, names: tuple[str, str]) -> None:
    """A name is compared with what is there and never opened as a path."""
    plans = KeptPlans(tmp_path / "plans")
    kept = plans.keep(made(tmp_path / "one", b"%PDF 1"))
    with pytest.raises(NotFoundError, match="still kept"):
        plans.find(*names)
    with pytest.raises(NotFoundError, match="file in this plan"):
        plans.find(kept, "../../one")


@pytest.mark.parametrize("bound", ["plans", "bytes", "age"])
def test_the_oldest_go(tmp_path: Path, bound: str) -> None:
    """Beyond two plans, a hundred bytes or a minute the older go, never the newest."""
    limits = {
        "plans": KeptPlans(tmp_path / "plans", most_plans=2, now_seconds=lambda: 3_000.0),
        "bytes": KeptPlans(tmp_path / "plans", most_bytes=100, now_seconds=lambda: 3_000.0),
        "age": KeptPlans(tmp_path / "plans", most_seconds=60, now_seconds=lambda: 3_061.0),
    }
    plans = limits[bound]
    anything = KeptPlans(tmp_path / "plans", now_seconds=lambda: 3_000.0)
    names = []
    for number in range(3):
        name = anything.keep(made(tmp_path / "new", b"%d" % number * 45))
        at_seconds = 2_998 + number * 3
        os.utime(tmp_path / "plans" / name, (at_seconds, at_seconds))
        names.append(name)
    name = plans.keep(made(tmp_path / "new", b"x" * 45))
    left = {path.name for path in (tmp_path / "plans").iterdir()}
    expected = {"plans": {names[2], name}, "bytes": {names[2], name}, "age": {*names[1:], name}}
    assert left == expected[bound]
