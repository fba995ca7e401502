"""Tests for plates to a finished file."""

from __future__ import annotations

import hashlib
import io
import zlib
from dataclasses import replace
from pathlib import Path

import pypdf
import pytest
from PIL import Image

from service.cards.compose.end_label import compose_end_labels
from service.cards.kinds import END_LABEL
from service.contents.packing import Packing
from service.errors import ProofFailedError
from service.geometry import Rect, Size
from service.pipeline.options import MadeCard, PrintOptions
from service.pipeline.printing.file import make_file
from service.pipeline.printing.lay import lay_file
from service.pipeline.printing.shelf import Shelf
from service.records.record import ContainerRecord, Museum
from service.render.compose.sheets import Parts
from service.render.plates.plate import PictureUse, Plate, PlateProof, ProvedPlate
from service.render.reading.fonts import shipped_fonts
from service.render.task import FONTS_CONF
from service.sheets.impose import Face
from service.sheets.stocks import STOCKS, find_stock
from tests.outside.oracle import differences

STOCK = find_stock("A4 2x4 99.1x67.7", STOCKS)
BAR = zlib.compress(b"0 g 20 20 100 100 re f")


def proved(ink: Rect) -> ProvedPlate:
    """Make a plate with a bar, whose proof says how far ink reaches."""
    plate = Plate(Size(99.1, 67.7), BAR, (), (), (), "a label")
    return ProvedPlate(plate, PlateProof(0, 0, 0, 0, ink))


@pytest.fixture
def parts() -> Parts:
    """Give the shipped fonts, and neither pictures nor marks."""
    fonts = tuple(shipped_fonts(FONTS_CONF.parent).items())
    return Parts(dict[str, bytes]().__getitem__, dict[str, bytes]().__getitem__, fonts)


def card(number: str) -> MadeCard:
    """Make a card of one face."""
    packing = Packing(ContainerRecord(number), 1, ())
    label = compose_end_labels(packing, Museum())[0]
    return MadeCard(END_LABEL, label, STOCK, (Face("a", Size(99.1, 67.7)),))


def test_a_sheet_is_a_page(parts: Parts, tmp_path: Path) -> None:
    """Nine labels on sheets of eight are a file of two pages at its place."""
    shelf = Shelf()
    shelf.add({"a": proved(Rect(5, 5, 50, 50))})
    cards = [card(str(number)) for number in range(9)]
    file = make_file(lay_file(cards, shelf, PrintOptions(), tmp_path), shelf, [parts])
    assert file.path == tmp_path / "end-label, A4 2x4 99.1x67.7.pdf"
    assert len(pypdf.PdfReader(file.path).pages) == 2


def test_ink_that_leaves_its_face_is_not_handed_over(parts: Parts, tmp_path: Path) -> None:
    """A plate whose ink reaches beyond the label fails the proof of its file."""
    shelf = Shelf()
    shelf.add({"a": proved(Rect(5, 5, 99, 50))})
    with pytest.raises(ProofFailedError):
        make_file(lay_file([card("1")], shelf, PrintOptions(), tmp_path), shelf, [parts])


def test_the_same_cards_give_the_same_bytes(parts: Parts, tmp_path: Path) -> None:
    """Two files of the same plates are equal, and another plate is another file."""
    shelf = Shelf()
    shelf.add({"a": proved(Rect(5, 5, 50, 50))})
    folders = [tmp_path / name for name in ("one", "two")]
    for folder in folders:
        folder.mkdir()
    laid = [lay_file([card("1")], shelf, PrintOptions(), each) for each in folders]
    one, two = (make_file(each, shelf, [parts]) for each in laid)
    assert one.pdf == two.pdf
    assert replace(one, path=two.path) == two
    assert [found.share for found in differences(one.pdf, two.pdf)] == [0.0]


def test_a_damaged_picture_is_mended_on_the_second_attempt(parts: Parts, tmp_path: Path) -> None:
    """A file whose picture is not the one named is written once more, with what mends it."""
    target = io.BytesIO()
    Image.new("RGB", (120, 90), (110, 120, 130)).save(target, "JPEG")
    sound = target.getvalue()
    damaged = sound[:-40] + bytes(20) + sound[-20:]
    use = PictureUse(hashlib.sha256(sound).hexdigest(), 120, 90)
    one = proved(Rect(5, 5, 50, 50))
    content = zlib.compress(b"q 100 0 0 75 20 20 cm /P0 Do Q")
    shelf = Shelf()
    shelf.add({"a": replace(one, plate=replace(one.plate, content=content, pictures=(use,)))})
    attempts = [
        replace(parts, pictures=dict.fromkeys([use.sha256], jpeg).__getitem__)
        for jpeg in (damaged, sound)
    ]
    laid = lay_file([card("1")], shelf, PrintOptions(), tmp_path)
    assert make_file(laid, shelf, attempts).sheets == 1
    with pytest.raises(ProofFailedError, match="picture"):
        make_file(laid, shelf, attempts[:1])
