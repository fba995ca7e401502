"""Tests for photos that were chosen for an object."""

from __future__ import annotations

from pathlib import Path

import pytest

from service.errors import NotFoundError
from service.keeping.desk import Desk
from service.keeping.table.add_photos import add_photos
from service.records.record import PhotoRole
from service.store.open import reading
from service.store.shelf.photos import find_photo_files
from tests.keeping.made import JAR
from tests.keeping.photos.test_bring import picture
from tests.store.made import LATER


def test_what_can_be_used_comes_to_the_object(desk: Desk, tmp_path: Path) -> None:
    """Whatever the files are called; what cannot be opened is told."""
    made = {"1.jpg": picture(90), "2.jpg": picture(120), "3.jpg": b"no photo"}
    files = {name: tmp_path / name for name in made}
    for name, path in files.items():
        path.write_bytes(made[name])
    new, findings = add_photos(desk, JAR, files, PhotoRole.BACK, stamp=LATER)
    assert new == 2
    assert [one.code for one in findings].count("photo-unusable") == 1
    with reading(desk.engine) as connection:
        found = find_photo_files(connection, [JAR])[JAR]
    assert [one.role for one in found] == [PhotoRole.BACK, PhotoRole.BACK]
    with pytest.raises(NotFoundError):
        add_photos(desk, "none", {"1.jpg": files["1.jpg"]}, PhotoRole.BACK, stamp=LATER)
