from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import ExitStack, closing
from pathlib import Path

import pytest

import service.render.frames.store
from service.errors import SlotRefusedError
from service.geometry import Size
from service.render.frames.frame import Frame
from service.render.frames.kept import frame_from_json
from service.render.frames.store import FrameStore
from service.render.frames.versions import frames_sha256
from service.render.task import TEMPLATES
from tests.render.frames import made

pytestmark = [pytest.mark.print, pytest.mark.slow]
OpenStore = Callable[..., FrameStore]
LOOKS = (made.TITLE, made.NO_PHOTO)


@pytest.fixture
def stores() -> Iterator[OpenStore]:
    """Open stores that remember nothing by themselves, and end their children."""
    with ExitStack() as stack:

        def opened(folder: Path, templates: Path = TEMPLATES) -> FrameStore:
            return stack.enter_context(closing(FrameStore(folder, templates=templates)))

        yield opened


def find(stores: OpenStore, folder: Path) -> Frame:
    """Ask a new store."""
    return stores(folder).find_or_make(made.KIND, made.FACE, LOOKS)


def only_file(folder: Path) -> Path:
    """Give the one file of a folder."""
    (path,) = folder.iterdir()
    return path


def test_a_frame_is_measured_once(stores: OpenStore, tmp_path: Path) -> None:
    """Another process finds on disk what the first has measured, and asks no engine."""
    first = find(stores, tmp_path)
    kept = only_file(tmp_path)
    written = kept.stat().st_mtime_ns
    assert first.sha256 == frames_sha256()
    assert first.sha256 in kept.name
    assert find(stores, tmp_path) == first
    assert kept.stat().st_mtime_ns == written


def test_what_another_store_measured_meanwhile_is_taken(
    stores: OpenStore, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A store that knows the kind already looks on the disk before it asks the engine."""
    one, other = stores(tmp_path), stores(tmp_path)
    one.find_or_make(made.KIND, made.FACE, LOOKS)
    other.find_or_make(made.KIND, made.FACE, LOOKS)
    more = one.find_or_make(made.KIND, made.FACE, [made.PANEL])
    monkeypatch.setattr(service.render.frames.store, "compile_frame", None)
    assert other.find_or_make(made.KIND, made.FACE, [made.PANEL]) == more


@pytest.mark.parametrize("damage", ["cut", "empty", "noise", "other-hash"])
def test_a_damaged_file_counts_as_absent(stores: OpenStore, tmp_path: Path, damage: str) -> None:
    """Whatever became of the file, the frame is measured anew and kept whole."""
    first = find(stores, tmp_path)
    kept = only_file(tmp_path)
    text = kept.read_text(encoding="ascii")
    damaged = {
        "cut": text[: len(text) // 2].encode(),
        "empty": b"",
        "noise": bytes(range(256)),
        "other-hash": text.replace(first.sha256, "0" * 64).encode(),
    }
    kept.write_bytes(damaged[damage])
    assert find(stores, tmp_path) == first
    assert only_file(tmp_path).read_text(encoding="ascii") == text


def test_new_looks_and_sizes_are_added(stores: OpenStore, tmp_path: Path) -> None:
    """A frame grows by what is missing and loses nothing."""
    first = find(stores, tmp_path)
    store = stores(tmp_path)
    more = store.find_or_make(made.KIND, made.FACE, [made.PANEL])
    label = Size(60.0, 30.0)
    most = store.find_or_make(made.KIND, label, [made.TITLE])
    assert dict(first.moulds).items() < dict(more.moulds).items()
    assert most.moulds == more.moulds
    assert set(most.statics) == {made.FACE, label}
    assert frame_from_json(only_file(tmp_path).read_text(encoding="ascii")) == most


def test_what_another_process_kept_meanwhile_stays(stores: OpenStore, tmp_path: Path) -> None:
    """Two stores that measured different looks leave a file that has both."""
    one, other = stores(tmp_path), stores(tmp_path)
    one.find_or_make(made.KIND, made.FACE, [made.TITLE])
    other.find_or_make(made.KIND, made.FACE, [made.TITLE])
    one.find_or_make(made.KIND, made.FACE, [made.PANEL])
    other.find_or_make(made.KIND, made.FACE, [made.SYMBOL])
    kept = frame_from_json(only_file(tmp_path).read_text(encoding="ascii"))
    assert set(kept.moulds) == {made.TITLE, made.PANEL, made.SYMBOL}


def test_marks_are_drawn_once(stores: OpenStore, tmp_path: Path) -> None:
    """The forms of all marks stand in one file and come back from it, or are drawn anew."""
    first = stores(tmp_path).marks()
    kept = only_file(tmp_path)
    text = kept.read_text(encoding="ascii")
    assert first == stores(tmp_path).marks()
    kept.write_text("{", encoding="ascii")
    stores(tmp_path).marks()
    assert kept.read_text(encoding="ascii") == text


def test_nothing_is_kept_of_a_refused_template(stores: OpenStore, tmp_path: Path) -> None:
    """A template that asks too much leaves no file behind."""
    templates = made.templates_with(tmp_path / "own", css=".text { letter-spacing: 1px }")
    folder = tmp_path / "kept"
    store = stores(folder, templates)
    with pytest.raises(SlotRefusedError, match="letter-spacing"):
        store.find_or_make(made.KIND, made.FACE, LOOKS)
    assert not folder.exists()
