from __future__ import annotations

from pathlib import Path

import pytest

from service.render.pictures.files import write_whole


def test_a_file_is_written_and_replaced(tmp_path: Path) -> None:
    """The last writing counts, and nothing is left beside it."""
    for content in (b"first", b"second"):
        write_whole(tmp_path / "file", content)
        assert (tmp_path / "file").read_bytes() == content
    assert [path.name for path in tmp_path.iterdir()] == ["file"]


def test_what_cannot_be_written_leaves_nothing(tmp_path: Path) -> None:
    """Where the name is taken by a folder, it stays and the file beside it goes."""
    (tmp_path / "file" / "inside").mkdir(parents=True)
    with pytest.raises(OSError, match="file"):
        write_whole(tmp_path / "file", b"content")
    assert [path.name for path in tmp_path.iterdir()] == ["file"]
