from __future__ import annotations

import pytest

from service.records.photos.edit import AS_IT_CAME, PhotoCrop, PhotoEdit, make_crop


def test_a_photo_as_it_came_has_no_key() -> None:
    """Every other edit has one of its own, in signs that any file system takes."""
    crop = PhotoCrop(0.1, 0.25, 1.0, 0.9999)
    edits = [AS_IT_CAME, PhotoEdit(1), PhotoEdit(3), PhotoEdit(0, crop), PhotoEdit(1, crop)]
    assert [one.key for one in edits] == [
        "",
        "-t1",
        "-t3",
        "-c1000.2500.10000.9999",
        "-t1-c1000.2500.10000.9999",
    ]


@pytest.mark.parametrize(
    ("edit", "size_px"),
    [
        (AS_IT_CAME, (400, 300)),
        (PhotoEdit(1), (300, 400)),
        (PhotoEdit(2), (400, 300)),
        (PhotoEdit(3, PhotoCrop(0.0, 0.0, 0.5, 1.0)), (300, 200)),
        (PhotoEdit(0, PhotoCrop(0.9999, 0.9999, 1.0, 1.0)), (1, 1)),
    ],
)
def test_an_odd_turn_swaps_the_sides(edit: PhotoEdit, size_px: tuple[int, int]) -> None:
    """A crop is drawn on the upright photo, and turned with it; a pixel is always left."""
    assert edit.size_px(400, 300) == size_px


@pytest.mark.parametrize(
    "ratios", [(0.5, 0, 0.5, 1), (0, 0.6, 1, 0.4), (-0.1, 0, 1, 1), (0, 0, 1, 1.1)]
)
def test_what_is_no_part_is_refused(ratios: tuple[float, float, float, float]) -> None:
    """The edges lie within the photo, left before right and top before bottom."""
    with pytest.raises(ValueError, match="A part of a photo lies between 0 and 1"):
        make_crop(ratios)


def test_the_whole_photo_is_no_crop() -> None:
    """A difference that nobody sees is none."""
    assert make_crop((0, 0, 1, 1)) is None
    assert make_crop((0.00001, 0, 0.99999, 1)) is None
    assert make_crop((0.1, 0, 1, 1)) == PhotoCrop(0.1, 0, 1, 1)
