from __future__ import annotations

import pypdf
import pytest

from service.cards.swap_list import SwapList
from service.errors import ContentsError
from service.pipeline.ready import Workshop
from service.pipeline.swap_list import print_swap_list
from tests.pages.test_swap_list import made


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_the_list_is_printed_and_proved(workshop: Workshop) -> None:
    """An independent reader finds every number and reason on as many pages as there are."""
    path = print_swap_list(made(12), workshop, paper="Letter")
    read = pypdf.PdfReader(path)
    words = " ".join(page.extract_text() for page in read.pages)
    assert all(f"B-{number:03}" in words for number in range(12))
    assert "r3 KMTF" in words
    assert len(read.pages) > 1
    assert read.pages[0].mediabox.width == pytest.approx(612, abs=0.01)


def test_an_empty_list_is_not_printed(workshop: Workshop) -> None:
    """Nothing to walk for is said in words."""
    with pytest.raises(ContentsError, match="No card"):
        print_swap_list(SwapList("", "", ()), workshop)
