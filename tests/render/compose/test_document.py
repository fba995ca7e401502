from __future__ import annotations

import io
from xml.etree import ElementTree as ET

import pikepdf
import pytest
from pikepdf import Name

from service.geometry import Size
from service.render.compose.document import Document, box_of
from tests.render.compose.made_plates import opened


def made(*sizes: Size, title: str = "Lid cards") -> pikepdf.Pdf:
    """Write a file of empty pages."""
    target = io.BytesIO()
    document = Document(target)
    for size in sizes:
        document.begin_page()
        document.write_page(size, b"", [])
    document.close(title=title)
    return opened(target.getvalue())


def test_pages_are_as_large_as_asked_and_in_order() -> None:
    """Each page to a thousandth of a millimetre."""
    sizes = [Size(210.0, 297.0), Size(63.5, 38.1), Size(297.0, 420.0)]
    with made(*sizes) as pdf:
        found = [[float(side) * 25.4 / 72 for side in page.mediabox] for page in pdf.pages]
        for box, size in zip(found, sizes, strict=True):
            assert box == pytest.approx([0, 0, size.width_mm, size.height_mm], abs=1e-3)


def test_the_file_tells_its_title_and_nothing_of_its_making() -> None:
    """Title in both places, our name alone, no date; viewers show the title and print full size."""
    title = "Lid cards <B> & more, ثقيل"
    with made(Size(100.0, 60.0), title=title) as pdf:
        assert {key: str(value) for key, value in pdf.docinfo.items()} == {
            "/Title": title,
            "/Producer": "Underlid",
            "/Creator": "Underlid",
        }
        packet = pdf.Root.Metadata.read_raw_bytes().decode("utf-8")
        assert title in "".join(ET.fromstring(packet).itertext())  # noqa: S314 - ours.
        assert "Date" not in packet
        assert pdf.Root.ViewerPreferences.DisplayDocTitle
        assert pdf.Root.ViewerPreferences.PrintScaling == Name("/None")
        assert str(pdf.Root.Lang) == "en"


def test_boxes_are_written_in_points() -> None:
    """25.4 mm are 72 points."""
    assert box_of(Size(25.4, 12.7)) == b"0 0 72 36"
