from __future__ import annotations

import io

import pytest
from PIL import Image

from service.errors import NotFoundError
from service.keeping.desk import Desk
from service.keeping.photos.small import find_small_photo, make_small_photo


def test_a_photo_is_made_small_once(desk: Desk) -> None:
    """First there is none; made once, it is found again; what is no photo is not shown."""
    drawn = io.BytesIO()
    Image.effect_noise((800, 600), 50).convert("RGB").save(drawn, "JPEG")
    stored = desk.shelf.put(drawn.getvalue(), ".jpg")
    assert find_small_photo(desk.workshop.cache_folder, stored.sha256) is None
    made = make_small_photo(desk, stored.sha256, ".jpg")
    assert find_small_photo(desk.workshop.cache_folder, stored.sha256) == made
    with Image.open(io.BytesIO(made)) as picture:
        assert picture.format == "JPEG"
    broken = desk.shelf.put(b"no photo", ".jpg")
    with pytest.raises(NotFoundError):
        make_small_photo(desk, broken.sha256, ".jpg")
