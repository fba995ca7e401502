"""Tests for the one place that builds real things."""

from __future__ import annotations

from pathlib import Path

import pytest

import service.wiring
from service.config import Settings
from service.errors import ConfigError
from service.pages.page import TextStyle
from service.records.record import Museum
from service.store.load_records import load_museum
from service.store.open import reading
from service.wiring import open_bench, open_desk, open_store, open_workshop


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


def test_the_desk_has_a_store_and_a_shelf(tmp_path: Path) -> None:
    """A new data folder gets a store of today's form; files lie beside it, or in a bucket."""
    with open_desk(Settings(data=tmp_path)) as desk:
        stored = desk.shelf.put(b"%PDF", ".pdf")
        with reading(desk.engine) as connection:
            assert load_museum(connection) == Museum()
    assert (tmp_path / "store.db").is_file()
    assert list((tmp_path / "files").rglob(f"{stored.sha256}.pdf"))
    with open_desk(Settings(data=tmp_path, files="memory:///")) as desk:
        assert list(desk.shelf.names()) == []


def test_the_store_can_lie_elsewhere(tmp_path: Path) -> None:
    """A database by URL is used in place of the one in the data folder."""
    url = f"sqlite:///{tmp_path / 'other.db'}"
    with open_store(Settings(data=tmp_path / "data", database=url)) as engine:
        assert engine.url.database == str(tmp_path / "other.db")
    assert not (tmp_path / "data").exists()


def test_a_bench_draws_with_one_child(tmp_path: Path) -> None:
    """It is small, and nothing is started before there is work."""
    with open_bench(Settings(data=tmp_path, processes=4)) as bench:
        assert (bench.workers.count, bench.decoders.count) == (1, 1)
        assert bench.scratch_folder.is_relative_to(tmp_path)
