"""Tests for bringing photos in bulk."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
from PIL import Image

from service.keeping.desk import Desk
from service.keeping.photos.bring import bring_in_bulk
from service.keeping.today import load_printable
from service.store.open import reading
from tests.keeping.made import BOX, JAR, LEAD
from tests.store.made import LATER, STAMP


def picture(shade: int) -> bytes:
    """Give a photo of one grey."""
    stream = io.BytesIO()
    Image.new("RGB", (400, 300), (shade,) * 3).save(stream, "JPEG")
    return stream.getvalue()


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Give a folder as people hand it over."""
    made = tmp_path / "photos"
    made.mkdir()
    (made / f"{JAR}.JPG").write_bytes(picture(90))
    (made / "1931-14-2 back.jpg").write_bytes(picture(120))
    (made / f"{LEAD}_2.jpg").write_bytes(b"\xff\xd8\xff no photo")
    (made / "holiday.jpg").write_bytes(picture(200))
    return made


def test_photos_come_to_their_objects(desk: Desk, folder: Path) -> None:
    """Matched and usable ones are kept and printed; the others are told, file by file."""
    brought = bring_in_bulk(desk, folder, stamp=STAMP)
    assert {(photo.file, photo.object_number) for photo in brought.matched} == {
        (f"{JAR}.JPG", JAR),
        ("1931-14-2 back.jpg", LEAD),
    }
    assert brought.new == 2
    assert {(finding.code, finding.where.file) for finding in brought.findings} >= {
        ("photo-not-named", "holiday.jpg"),
        ("photo-unusable", f"{LEAD}_2.jpg"),
    }
    with reading(desk.engine) as connection:
        loaded = load_printable(connection, [BOX])
    for photo in loaded.photos.values():
        assert desk.shelf.get(photo.sha256, photo.suffix).startswith(b"\xff\xd8")
    assert {one.object_number for one in loaded.collection.objects if one.photos} == {JAR, LEAD}


def test_the_same_folder_twice_changes_nothing(desk: Desk, folder: Path) -> None:
    """The second time nothing is new."""
    bring_in_bulk(desk, folder, stamp=STAMP)
    again = bring_in_bulk(desk, folder, stamp=LATER)
    assert (len(again.matched), again.new) == (2, 0)
