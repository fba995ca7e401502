from __future__ import annotations

import io

import pytest
from PIL import Image

from service.errors import FileNotStoredError, NotFoundError
from service.keeping.desk import Desk
from service.keeping.photos.pictures import WantedPicture, find_picture, make_picture
from service.keeping.photos.shown import PhotoChange, change_photo
from service.store.open import reading
from tests.keeping.made import GOWN, JAR
from tests.keeping.photos.test_shown import bring
from tests.store.made import LATER


def _look(desk: Desk, wanted: WantedPicture) -> bytes | None:
    with reading(desk.engine) as connection:
        return find_picture(connection, desk.workshop.cache_folder, wanted)


def _size(jpeg: bytes) -> tuple[int, int]:
    with Image.open(io.BytesIO(jpeg)) as opened:
        assert (opened.format, dict(opened.getexif())) == ("JPEG", {})
        return opened.size


def test_a_picture_is_made_once(desk: Desk) -> None:
    """The whole photo as it stands, and what the cards of its object show of it."""
    sha256 = bring(desk, (500, 380))
    change = PhotoChange(turns=1, crop=(0, 0, 0.5, 1))
    change_photo(desk, GOWN, sha256, change, stamp=LATER)
    whole, shown = WantedPicture(sha256, 200), WantedPicture(sha256, 200, GOWN)
    assert (_look(desk, whole), _look(desk, shown)) == (None, None)
    assert _size(make_picture(desk, whole)) == (320, 243)
    assert _size(make_picture(desk, shown)) == (380, 250)
    for wanted in (whole, shown):
        assert _look(desk, wanted) == make_picture(desk, wanted)


def test_only_what_the_store_names_is_given(desk: Desk) -> None:
    """Not a photo of another object under its name, and not one whose file is lost."""
    sha256 = bring(desk, (410, 310))
    for wanted in (WantedPicture("0" * 64, 9), WantedPicture(sha256, 9, JAR)):
        with pytest.raises(NotFoundError):
            _look(desk, wanted)
        with pytest.raises(NotFoundError):
            make_picture(desk, wanted)
    desk.shelf.local_path(sha256, ".jpg").unlink()
    for wanted in (WantedPicture(sha256, 9), WantedPicture(sha256, 9, GOWN)):
        with pytest.raises(FileNotStoredError):
            make_picture(desk, wanted)
