"""Tests for photos from the packing table."""

from __future__ import annotations

from pathlib import Path

from service.keeping.desk import Desk
from service.keeping.table.photo import keep_photo
from tests.keeping.photos.test_bring import picture


def test_a_photo_lies_on_the_shelf(desk: Desk, tmp_path: Path) -> None:
    """With the ending that its name has, where that is one of a photo."""
    path = tmp_path / "sent"
    path.write_bytes(picture(90))
    stored, _ = keep_photo(desk, path, named="IMG_0001.JPEG")
    assert stored is not None
    assert stored.suffix == ".jpeg"
    assert desk.shelf.get(stored.sha256, ".jpeg") == picture(90)
    again, _ = keep_photo(desk, path, named="../x.php")
    assert again is not None
    assert again.suffix == ".jpg"


def test_what_is_no_photo_is_not_kept(desk: Desk, tmp_path: Path) -> None:
    """The finding says why."""
    path = tmp_path / "sent"
    path.write_bytes(b"\xff\xd8\xff no photo")
    stored, findings = keep_photo(desk, path, named="a.jpg")
    assert stored is None
    assert [one.code for one in findings] == ["photo-unusable"]
