from __future__ import annotations

import tomllib

import pypdf
import pypdfium2
import pytest

from service.pipeline.documents.specimen import print_specimen
from service.pipeline.ready import Workshop
from service.render.task import TEMPLATES


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_every_mark_is_printed_with_all_its_words(workshop: Workshop) -> None:
    """The table, read by the standard library, stands whole on the pages, read by pypdf."""
    path = print_specimen(workshop)
    read = _plain("".join(page.extract_text() for page in pypdf.PdfReader(path).pages))
    table = TEMPLATES / "pictograms" / "pictograms.toml"
    marks = tomllib.loads(table.read_text("utf-8"))["mark"]
    wanted = [mark[name] for mark in marks for name in ("words", "meaning", "geometry", "status")]
    assert [words for words in wanted if _plain(words) not in read] == []
    assert "Noneisaconformingsign" in read


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_the_first_mark_is_twenty_millimetres_wide(workshop: Workshop) -> None:
    """PDFium finds the black band of the first triangle where it was meant, give or take a dot."""
    page = pypdfium2.PdfDocument(print_specimen(workshop))[0]
    grey = page.render(scale=300 / 72).to_pil().convert("L")
    dots_per_mm = 300 / 25.4
    strip = grey.crop(
        (0, round(50 * dots_per_mm), round(33.5 * dots_per_mm), round(57.5 * dots_per_mm))
    )
    box = strip.point(lambda tone: 255 if tone < 60 else 0).getbbox()
    assert box is not None
    assert (box[2] - box[0]) / dots_per_mm == pytest.approx(20.0, abs=0.2)


def _plain(text: str) -> str:
    """Take out the blanks, which a reader may set as it likes."""
    return "".join(text.split())
