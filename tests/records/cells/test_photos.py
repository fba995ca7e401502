from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from service.records.cells.photos import read_photos
from service.records.record import PhotoReference, PhotoRole
from service.records.rows.cell import Cell

FRONT, BACK, DETAIL = PhotoRole
MakeCell = Callable[[str], Cell]


def test_first_photo_is_the_front(make_cell: MakeCell) -> None:
    """The first photo is the front unless it says more, and further ones are details."""
    cell = make_cell("1_front.jpg; 1_back.JPG (Back); x (1).jpg; y.tif (detail)")
    assert read_photos(cell) == (
        PhotoReference("1_front.jpg", FRONT),
        PhotoReference("1_back.JPG", BACK),
        PhotoReference("x (1).jpg", DETAIL),
        PhotoReference("y.tif", DETAIL),
    )
    assert cell.notebook.findings() == ()


def test_unknown_role_is_noted(make_cell: MakeCell) -> None:
    """A photo of an unforeseen side is kept, and the finding says what it counts as."""
    cell = make_cell("a.jpg (lid)")
    assert read_photos(cell) == (PhotoReference("a.jpg", FRONT),)
    assert [finding.code for finding in cell.notebook.findings()] == ["unknown-photo-role"]


def test_photos_of_a_document(make_cell: MakeCell) -> None:
    """A document may take file and role apart itself."""
    cell = replace(make_cell(""), listed=({"file": "a.jpg", "role": "back"}, {"file": ""}, "b.jpg"))
    assert read_photos(cell) == (PhotoReference("a.jpg", BACK), PhotoReference("b.jpg", DETAIL))
