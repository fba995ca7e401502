from __future__ import annotations

import io
from collections.abc import Mapping

import numpy as np
import pikepdf
import pytest
from PIL import Image

from service.errors import SlotRefusedError
from service.geometry import Rect, Size
from service.pages.page import MarkBlock, Page
from service.render.frames.marks import MARK_BOX, draw_marks, mark_form
from service.render.raster import opened, raster_of
from service.render.task import TEMPLATES
from service.render.worker import Workers
from tests.render.frames import made

SIDE_PT = 72.0
CODES = sorted(path.stem for path in (TEMPLATES / "pictograms").glob("*.svg"))


@pytest.fixture(scope="module")
def forms(workers: Workers) -> Mapping[str, bytes]:
    """Draw all marks once."""
    (made,) = workers.run(draw_marks, [TEMPLATES])
    assert isinstance(made, dict)
    return made


def shown(forms: Mapping[str, bytes], code: str) -> Image.Image:
    """Draw a form an inch wide, as a plate would."""
    pdf = pikepdf.new()
    page = pdf.add_blank_page(page_size=(SIDE_PT, SIDE_PT))
    form = pdf.make_stream(forms[code], Type=pikepdf.Name.XObject, Subtype=pikepdf.Name.Form)
    form.BBox = list(MARK_BOX)
    page.Resources = pikepdf.Dictionary(XObject=pikepdf.Dictionary({f"/M{code}": form}))
    page.Contents = pdf.make_stream(b"q 72 0 0 72 0 0 cm /M%s Do Q" % code.encode())
    data = io.BytesIO()
    pdf.save(data)
    with opened(data.getvalue()) as read:
        return raster_of(read[0], resolution_dpi=300).image


@pytest.mark.print
@pytest.mark.slow
def test_every_mark_looks_as_the_engine_draws_it(
    forms: Mapping[str, bytes], workers: Workers
) -> None:
    """A form and an image of the same file differ at an edge between dots at most."""
    assert list(forms) == CODES
    face = Size(25.4, 25.4)
    blocks = [MarkBlock("mark", Rect(0, 0, 25.4, 25.4), code, "") for code in CODES]
    pages = [Page("lid-card", "B-1", "", 1, 1, face, (block,)) for block in blocks]
    with opened(made.drawn(workers, *pages)) as engine:
        for number, code in enumerate(CODES):
            theirs = raster_of(engine[number], resolution_dpi=300).image
            differ = np.abs(np.asarray(theirs, int) - np.asarray(shown(forms, code), int)) > 96
            assert differ.mean() < 0.002, code


@pytest.mark.print
@pytest.mark.slow
def test_forms_need_no_resources(forms: Mapping[str, bytes]) -> None:
    """A form is paths and colours; nothing in it names anything of the file."""
    for code in CODES:
        words = {word for word in forms[code].split() if word[:1].isalpha() or b"/" in word}
        assert words <= {b"m", b"l", b"c", b"h", b"f", b"f*", b"rg", b"g"}, code


def form_of(content: bytes) -> bytes:
    """Read a mark from a page of 18 points, as the marks are drawn on."""
    with pikepdf.new() as pdf:
        page = pdf.add_blank_page(page_size=(18, 18))
        page.Contents = pdf.make_stream(content)
        return mark_form("gloves", page)


def test_a_path_is_brought_into_the_unit_square() -> None:
    """Half the side is a half, whatever matrices lie between (worked by hand)."""
    content = b"1 0 0 -1 0 18 cm q 0.75 0 0 0.75 0 0 cm 1 0 0 rg 0 0 m 0 0 12 6 re f Q"
    drawn = b"1 0 0 rg 0 1 m 0.5 1 l 0.5 0.75 l 0 0.75 l h f"
    assert form_of(content) == drawn


@pytest.mark.parametrize(
    ("content", "reason"),
    [
        (b"0 0 m 9 9 l S", "drawn by a stroke"),
        (b"0 0 9 9 re W n 0 0 18 18 re f", "cut off"),
        (b"0.5 0 0 0 k 0 0 9 9 re f", "red, green and blue"),
        (b"/Fm Do", "group"),
    ],
    ids=["line", "clipping", "other-colours", "group"],
)
def test_a_mark_of_more_than_filled_paths_is_refused(content: bytes, reason: str) -> None:
    """A mark that a plate could not draw is refused by its name."""
    with pytest.raises(SlotRefusedError, match=reason) as caught:
        form_of(content)
    assert caught.value.template == "gloves.svg"
