"""The specimen of marks to a finished file."""

from __future__ import annotations

from pathlib import Path

from service.pages.specimen.fit import fit_specimen
from service.pipeline.documents.document import WHOLE_PAGE, Paper, no_photos, print_document
from service.pipeline.ready import Workshop
from service.printed import to_print
from service.render.task import TEMPLATES
from service.sheets.stocks import STOCKS, find_stock
from service.symbols.pictograms import read_pictograms

_TABLE = TEMPLATES / "pictograms" / "pictograms.toml"


def print_specimen(workshop: Workshop, *, paper: str = "A4") -> Path:
    """Print every mark of the table; the file stands in a folder below the scratch folder.

    Raises:
        ProofFailedError: When a page does not read back as it should.
    """
    pictograms = read_pictograms(_TABLE.read_text("utf-8"))
    stock = find_stock(WHOLE_PAGE[paper], STOCKS)
    pages = fit_specimen(pictograms, stock.label, workshop.ruler)
    return print_document(
        pages, Paper(stock), no_photos(workshop), workshop, title=to_print("Marks")
    )
