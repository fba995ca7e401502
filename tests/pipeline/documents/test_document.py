from __future__ import annotations

import pypdfium2
import pytest

from service.geometry import Rect, Size
from service.pages.page import MarkBlock, Page, TextStyle
from service.pages.setting.text import Spot, set_text
from service.pipeline.documents.document import Paper, no_photos, print_document
from service.pipeline.ready import Workshop
from service.sheets.stocks import STOCKS, find_stock
from service.units import mm_from_points


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_a_document_begins_where_it_is_told(workshop: Workshop) -> None:
    """A page with a mark goes on the third label of a sheet, as PDFium finds it."""
    stock = find_stock("A4 2x4 99.1x67.7", STOCKS)
    mark = MarkBlock("mark", Rect(5, 5, 12, 12), "toxic", "Toxic")
    spot = Spot(20, 8, 60)
    words = set_text(workshop.ruler, "Toxic", TextStyle(12.0), spot, "words")
    size = Size(stock.label.width_mm, stock.label.height_mm)
    page = Page("swap-list", "B-1", "Trial", 1, 1, size, (mark, words))
    path = print_document(
        [page], Paper(stock, start_position=3), no_photos(workshop), workshop, title="Trial"
    )
    pdf = pypdfium2.PdfDocument(path)
    textpage = pdf[0].get_textpage()
    assert textpage.get_text_bounded().strip() == "Toxic"
    left_pt, _, _, top_pt = textpage.get_charbox(0, loose=True)
    place = stock.position_rect(3)
    assert mm_from_points(left_pt) == pytest.approx(place.x_mm + 20, abs=0.5)
    assert 297 - mm_from_points(top_pt) == pytest.approx(place.y_mm + 8, abs=1.5)
    assert path.name == "swap-list.pdf"
