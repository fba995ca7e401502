"""Tests for photos on the screen."""

from __future__ import annotations

import io
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field

import pytest
from PIL import Image

from service.errors import NotFoundError
from service.keeping.desk import Desk
from service.keeping.photos.screen import LONG_SIDE_PX, load_screen_photo


@dataclass
class _Lending:
    desk: Desk
    times: list[int] = field(default_factory=list)

    @contextmanager
    def __call__(self) -> Iterator[Desk]:
        self.times.append(1)
        yield self.desk


def test_a_photo_is_decoded_once_and_small(desk: Desk) -> None:
    """The second time nobody waits for the workshop."""
    stream = io.BytesIO()
    Image.effect_noise((2000, 1500), 80).save(stream, "JPEG")
    stored = desk.shelf.put(stream.getvalue(), ".jpg")
    lend, folder = _Lending(desk), desk.workshop.cache_folder
    first = load_screen_photo(stored, folder, lend)
    assert load_screen_photo(stored, folder, lend) == first
    assert len(lend.times) == 1
    with Image.open(io.BytesIO(first)) as image:
        assert LONG_SIDE_PX <= max(image.size) < 2000


def test_what_is_no_photo_is_not_found(desk: Desk) -> None:
    """A PDF on the shelf is nothing to show on a page."""
    stored = desk.shelf.put(b"%PDF-1.7 no photo", ".pdf")
    with pytest.raises(NotFoundError, match="usable photo"):
        load_screen_photo(stored, desk.workshop.cache_folder, _Lending(desk))
