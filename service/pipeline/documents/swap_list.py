"""The swap list to a finished file."""

from __future__ import annotations

from pathlib import Path

from service.cards.swap_list import SwapList
from service.errors import NothingToDoError
from service.pages.swap_list.fit import fit_swap_list
from service.pipeline.documents.document import WHOLE_PAGE, Paper, no_photos, print_document
from service.pipeline.ready import Workshop
from service.printed import to_print
from service.sentence import Sentence
from service.sheets.stocks import STOCKS, find_stock


def print_swap_list(swap_list: SwapList, workshop: Workshop, *, paper: str = "A4") -> Path:
    """Print the list; the file stands in a folder of its own below the scratch folder.

    Raises:
        NothingToDoError: When there is no card to replace.
        ProofFailedError: When a page does not read back as it should.
    """
    if not swap_list.rows:
        message = Sentence("No card has to be replaced.")
        raise NothingToDoError(message)
    stock = find_stock(WHOLE_PAGE[paper], STOCKS)
    pages = fit_swap_list(swap_list, stock.label, workshop.ruler)
    photos = no_photos(workshop)
    return print_document(pages, Paper(stock), photos, workshop, title=to_print("Swap list"))
